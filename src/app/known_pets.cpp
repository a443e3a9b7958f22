#include "app/known_pets.h"

#include <fmt/format.h>

#include <algorithm>

#include "app/new_files.h"
#include "base/text.h"
#include "spec/client_texts.h"
#include "spec/document.h"

namespace furnish {
namespace {
constexpr std::string_view mark_begin = "# Imported from ";
constexpr std::size_t mark_size = 16;

/// The mark at the end of a file's line about its making; empty if it has none.
std::string mark_in(std::string_view text) {
  const std::size_t begin = text.find(mark_begin);
  if (begin == std::string_view::npos) return {};
  const std::string_view line = trimmed(text.substr(begin, text.find('\n', begin) - begin));
  return line.size() < mark_size ? std::string()
                                 : std::string(line.substr(line.size() - mark_size));
}

/// The words behind a key of a section; empty if there are none.
std::string words_in(const TomlTable& root, std::string_view section, std::string_view key) {
  const auto table = std::ranges::find(root, section, &TomlEntry::key);
  if (table == root.end() || !std::holds_alternative<TomlTable>(table->node.value)) return {};
  const auto& entries = std::get<TomlTable>(table->node.value);
  const auto entry = std::ranges::find(entries, key, &TomlEntry::key);
  const auto* const words =
      entry == entries.end() ? nullptr : std::get_if<std::string>(&entry->node.value);
  return words == nullptr ? std::string() : *words;
}
}  // namespace

KnownPets::KnownPets(const ReadContext& context, const std::string& root, bool& complete)
    : context_(context), folder_(path_in(root, "pets")) {
  files_ = list_folder(context, folder_, complete);
  for (const std::string& file : files_) {
    names_.insert(plain_letters(stem(file)));
    const FileContent content = context.files.read(path_in(folder_, file));
    if (!content.bytes) {
      context.sink.error(
          "unreadable", {},
          fmt::format("{} cannot be read: {}", path_in(folder_, file), content.fault));
      complete = false;
      continue;
    }
    if (std::string mark = mark_in(*content.bytes); !mark.empty()) {
      by_mark_[mark] = file;
      mark_of_[file] = std::move(mark);
    }
  }
}

std::string KnownPets::mark_line(std::string_view list, const ClientPet& pet) {
  return fmt::format("{}{}, line {}: {}\n", mark_begin, visible(list), pet.span.begin.line,
                     pet.mark);
}

void KnownPets::read_details() {
  for (const std::string& file : files_) {
    SourceSet sources;
    DiagnosticSink said;  // what is wrong with it, `check` says
    const ReadContext own{context_.files, sources, said};
    const auto read = read_file(own, path_in(folder_, file), "").document;
    if (!read) continue;
    by_name_.emplace(
        plain_letters(words_in(read->root, "pet", "name")),
        Details{plain_letters(words_in(read->root, "owner", "name")),
                digits_of(words_in(read->root, "owner", "phone")), mark_of_[file], file});
  }
}

KnownPets::Found KnownPets::find(const ClientPet& pet, const std::set<std::string>& others) {
  if (const auto marked = by_mark_.find(pet.mark); marked != by_mark_.end()) {
    return {Likeness::same, marked->second};
  }
  if (!std::exchange(details_read_, true)) read_details();
  Found out;
  const std::string owner = plain_letters(pet.owner), phone = digits_of(pet.phone);
  const auto [first, last] = by_name_.equal_range(plain_letters(pet.name));
  for (auto it = first; it != last; ++it) {
    const Details& one = it->second;
    if (others.contains(one.mark)) continue;
    const bool phones_differ = !phone.empty() && !one.phone.empty() && phone != one.phone;
    if (one.owner == owner && !phones_differ) return {Likeness::same, one.file};
    if (one.owner == owner || one.owner.empty() || owner.empty()) {
      out = {Likeness::perhaps, one.file};
    }
  }
  return out;
}

std::string KnownPets::free_name(const ClientPet& pet) {
  const std::string base = file_name(pet.name);
  if (base.empty()) return {};
  const std::string family = file_name(pet.owner.substr(pet.owner.rfind(' ') + 1));
  std::vector<std::string> tries{base};
  if (!family.empty()) tries.push_back(fmt::format("{}-{}", base, family));
  for (const std::string& name : tries) {
    if (names_.insert(plain_letters(name)).second) return name;
  }
  for (int n = 2;; ++n) {
    std::string name = fmt::format("{}-{}", tries.back(), n);
    if (names_.insert(plain_letters(name)).second) return name;
  }
}
}  // namespace furnish
