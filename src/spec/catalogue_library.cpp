#include "spec/catalogue_library.h"

#include <fmt/format.h>

#include "base/text.h"
#include "spec/catalogue_reader.h"
#include "spec/document.h"

namespace furnish {
namespace {
constexpr std::string_view english_tag = "en";

/// "es" for "es-us"; nothing for "es".
std::string parent(const std::string& tag) {
  const std::size_t hyphen = tag.rfind('-');
  return tag.substr(0, hyphen == std::string::npos ? 0 : hyphen);
}

std::string words_folder(const std::string& styles) {
  if (styles.empty()) return {};
  return styles + (styles.ends_with('/') ? "words" : "/words");
}
}  // namespace

CatalogueLibrary::CatalogueLibrary(const ReadContext& context, const std::string& shipped_styles,
                                   const std::string& salon_styles)
    : context_(context), shipped_words_(words_folder(shipped_styles)) {
  const auto add = [&](const std::string& folder, std::optional<Shelf> Language::*shelf) {
    if (folder.empty()) return;
    bool read = true;
    const std::vector<std::string> files = list_folder(context, folder, read);
    listed_ = listed_ && read;
    for (const std::string& file : files) {
      const std::string tag = stem(file);
      Language& language = languages_[lower_ascii(tag)];
      language.tag = tag;
      language.*shelf = Shelf{folder + "/" + file, State::unread, {}};
    }
  };
  add(shipped_words_, &Language::shipped);
  add(words_folder(salon_styles), &Language::own);
}

std::vector<std::string> CatalogueLibrary::languages() const {
  std::vector<std::string> out;
  for (const auto& [key, language] : languages_) out.push_back(language.tag);
  return out;
}

bool CatalogueLibrary::has(std::string_view language) const {
  for (std::string tag = lower_ascii(language); !tag.empty(); tag = parent(tag)) {
    if (languages_.contains(tag)) return true;
  }
  return false;
}

std::vector<std::string> CatalogueLibrary::own_languages() const {
  std::vector<std::string> out;
  for (const auto& [key, language] : languages_) {
    if (language.own) out.push_back(language.tag);
  }
  return out;
}

const Catalogue* CatalogueLibrary::english() {
  const auto found = languages_.find(english_tag);
  if (found != languages_.end() && found->second.shipped) {
    const Catalogue* const read_now = read(*found->second.shipped, nullptr);
    found->second.shipped->catalogue.shipped = true;
    return read_now;
  }
  if (!english_missing_said_) {
    context_.sink
        .error("words-missing", {},
               fmt::format("there is no {}/{}.toml", shipped_words_, english_tag))
        .hint = "name the folder with the program's fonts/ and styles/ with --data";
  }
  english_missing_said_ = true;
  return nullptr;
}

const Catalogue* CatalogueLibrary::read(Shelf& shelf, const Catalogue* english) {
  if (shelf.state == State::unread) {
    auto catalogue = read_catalogue(context_, shelf.path, english);
    shelf.state = catalogue ? State::good : State::bad;
    if (catalogue) shelf.catalogue = std::move(*catalogue);
  }
  return shelf.state == State::good ? &shelf.catalogue : nullptr;
}

std::optional<CatalogueChain> CatalogueLibrary::shipped_english() {
  const Catalogue* const only = english();
  if (only == nullptr) return std::nullopt;
  return CatalogueChain{std::string(english_tag), {only}};
}

std::optional<CatalogueChain> CatalogueLibrary::chain(const std::string& language) {
  const Catalogue* const last = english();
  // Of a folder that cannot be listed nobody knows which words it changes.
  if (last == nullptr || !listed_) return std::nullopt;
  CatalogueChain out{language, {}};
  bool good = true;
  const auto add = [&](const std::string& tag) {
    const auto found = languages_.find(tag);
    if (found == languages_.end()) return;
    for (auto* const shelf : {&found->second.own, &found->second.shipped}) {
      if (!*shelf) continue;
      const Catalogue* const catalogue = read(**shelf, last);
      if (shelf == &found->second.shipped) (*shelf)->catalogue.shipped = true;
      if (catalogue == nullptr) {
        good = false;
      } else {
        out.catalogues.push_back(catalogue);
      }
    }
  };
  for (std::string tag = lower_ascii(language); !tag.empty() && tag != english_tag;
       tag = parent(tag)) {
    add(tag);
  }
  add(std::string(english_tag));
  if (!good) return std::nullopt;
  return out;
}
}  // namespace furnish
