#include "sheet/words.h"

#include <fmt/format.h>
#include <unicode/locid.h>
#include <unicode/msgfmt.h>

#include <array>
#include <stdexcept>

#include "sheet/pattern.h"

namespace furnish {
namespace {
constexpr std::string_view english_tag = "en";
constexpr std::string_view section = "sheet.";

/// The locale whose plurals and numbers a text has: of its catalogue, not of the reader, since a
/// text that falls back to English counts as English does.
icu::Locale locale_of(const std::string& tag) {
  UErrorCode code = U_ZERO_ERROR;
  const icu::Locale locale = icu::Locale::forLanguageTag(tag, code);
  return U_FAILURE(code) ? icu::Locale::getEnglish() : locale;
}

bool is_english(std::string_view tag) {
  return tag == english_tag || tag.starts_with("en-");
}

/// Checks the texts of a catalogue against those of English.
bool check(const Catalogue& catalogue, const Catalogue& english, DiagnosticSink& sink) {
  bool good = true;
  for (const auto& [key, text] : catalogue.texts) {
    const auto fault = [&](std::string_view code, const std::string& message) -> Diagnostic& {
      good = false;
      return sink.error(code, text.span, fmt::format("{}: {}", key, message));
    };
    const PatternPlaces own = read_pattern(text.value);
    if (!own.fault.empty()) {
      fault("bad-pattern", own.fault).hint =
          "a place is {0}, or {0, plural, one {# day} other {# days}}";
      continue;
    }
    const auto reference = english.texts.find(key);
    if (&catalogue == &english || reference == english.texts.end()) continue;
    const PatternPlaces wanted = read_pattern(reference->second.value);
    const auto numbers = [](const PatternPlaces& of) {
      std::vector<int> out;
      for (const auto& [number, kind] : of.places) out.push_back(number);
      return out;
    };
    if (numbers(own) != numbers(wanted)) {
      fault("other-places",
            fmt::format("has {} where English has {}", to_text(own.places), to_text(wanted.places)))
          .hint = fmt::format("in English: \"{}\"", reference->second.value);
      continue;
    }
    for (const auto& [number, kind] : own.places) {
      if (kind == PlaceKind::plain || wanted.places.at(number) != PlaceKind::plain) continue;
      fault("other-places", fmt::format("counts {{{}}}, which is a text in English", number)).hint =
          fmt::format("in English: \"{}\"", reference->second.value);
    }
  }
  return good;
}
}  // namespace

struct Words::Parts {
  struct Text {
    std::string pattern;
    std::shared_ptr<const icu::Locale> locale;
    std::unique_ptr<icu::MessageFormat> format;  ///< made when first said
  };
  std::string language;
  std::array<Text, phrase_count> phrases;
};

Words::Words(std::unique_ptr<Parts> parts) : parts_(std::move(parts)) {}
Words::~Words() = default;

const std::string& Words::language() const {
  return parts_->language;
}

std::unique_ptr<Words> Words::open(const CatalogueChain& chain, DiagnosticSink& sink) {
  const Catalogue& last = *chain.catalogues.back();
  bool good = true;
  std::map<const Catalogue*, std::shared_ptr<const icu::Locale>> locales;
  for (const Catalogue* const catalogue : chain.catalogues) {
    good = check(*catalogue, last, sink) && good;
    locales[catalogue] = std::make_shared<const icu::Locale>(locale_of(catalogue->language));
  }
  auto parts = std::make_unique<Parts>();
  parts->language = chain.language;
  std::size_t in_english = 0;
  std::string first_in_english;
  for (std::size_t i = 0; i < phrase_count; ++i) {
    const std::string key = std::string(section) + std::string(key_of(static_cast<Phrase>(i)));
    const Catalogue* from = nullptr;
    for (const Catalogue* const catalogue : chain.catalogues) {
      const auto found = catalogue->texts.find(key);
      if (found == catalogue->texts.end()) continue;
      from = catalogue;
      parts->phrases.at(i) = {found->second.value, locales[catalogue], nullptr};
      break;
    }
    if (from == nullptr) {
      sink.error("missing-words", last.span, fmt::format("English has no {}", key));
      good = false;
    } else if (is_english(from->language) && !is_english(chain.catalogues.front()->language)) {
      if (in_english++ == 0) first_in_english = key;
    }
  }
  if (!good) return nullptr;
  if (in_english > 0) {
    sink.warning(
        "missing-words", chain.catalogues.front()->span,
        fmt::format("{} of the texts for '{}' {} missing and said in English; the first "
                    "is {}",
                    in_english, chain.language, in_english == 1 ? "is" : "are", first_in_english));
  }
  return std::unique_ptr<Words>(new Words(std::move(parts)));
}

std::string Words::say(Phrase phrase, const std::vector<WordArgument>& arguments) const {
  Parts::Text& text = parts_->phrases.at(static_cast<std::size_t>(phrase));
  // Without a place and without an apostrophe, which quotes, a pattern is what it says.
  if (text.pattern.find_first_of("{'") == std::string::npos) return text.pattern;
  UErrorCode code = U_ZERO_ERROR;
  if (!text.format) {
    text.format = std::make_unique<icu::MessageFormat>(icu::UnicodeString::fromUTF8(text.pattern),
                                                       *text.locale, code);
  }
  std::vector<icu::Formattable> values;
  for (const WordArgument& argument : arguments) {
    if (const auto* words = std::get_if<std::string>(&argument)) {
      values.emplace_back(icu::UnicodeString::fromUTF8(*words));
    } else {
      values.emplace_back(static_cast<std::int32_t>(std::get<int>(argument)));
    }
  }
  icu::UnicodeString out;
  icu::FieldPosition ignored;
  text.format->format(values.data(), static_cast<std::int32_t>(values.size()), out, ignored, code);
  // open() has checked the pattern, so what fails is the caller's arguments.
  if (U_FAILURE(code)) throw std::logic_error("phrase " + text.pattern);
  std::string said;
  out.toUTF8String(said);
  return said;
}
}  // namespace furnish
