#include "sheet/words.h"

#include <fmt/format.h>
#include <unicode/locid.h>
#include <unicode/msgfmt.h>

#include <algorithm>
#include <array>
#include <stdexcept>

#include "base/said_in.h"
#include "base/text.h"
#include "page/direction.h"
#include "sheet/pattern.h"
#include "sheet/terms.h"
#include "trade/stock.h"

namespace furnish {
namespace {
constexpr std::string_view english_tag = "en";
constexpr std::string_view phrases = "sheet.", written_words = "written.";

// Unicode's isolates: what stands between them has a direction of its own (UAX #9).
constexpr std::string_view first_strong_isolate = "\u2068", end_of_isolate = "\u2069";

/// Latin letters and digits: a telephone's groups would turn round as well.
bool runs_from_left(std::string_view text) {
  return std::ranges::any_of(text, [](char c) {
    const char lower = static_cast<char>(c | 0x20);
    return (lower >= 'a' && lower <= 'z') || (c >= '0' && c <= '9');
  });
}

std::string isolated(std::string_view text) {
  std::string out(first_strong_isolate);
  out += text;
  out += end_of_isolate;
  return out;
}

/// What a person wrote may begin an isolate or end one that it did not begin; what stands around it
/// must not turn with it.
std::string without_isolates(std::string_view text) {
  std::string out(text);
  for (const std::string_view mark : {"\u2066", "\u2067", "\u2068", "\u2069"}) {
    for (std::size_t at; (at = out.find(mark)) != std::string::npos;) out.erase(at, mark.size());
  }
  return out;
}

/// The locale whose plurals and numbers a text has: of its catalogue, not of the reader, since a
/// text that falls back to English counts as English does.
icu::Locale locale_of(const std::string& tag) {
  UErrorCode code = U_ZERO_ERROR;
  const icu::Locale locale = icu::Locale::forLanguageTag(tag, code);
  if (U_FAILURE(code)) return icu::Locale::getEnglish();
  if (std::string_view(locale.getName()).find('@') != std::string_view::npos) return locale;
  // Blades, phone numbers and measures have these digits, so all numbers do. ICU's older way to say
  // so: the newer one reads a table that takes as long as setting a card.
  return icu::Locale((std::string(locale.getName()) + "@numbers=latn").c_str());
}

bool is_english(std::string_view tag) {
  return tag == english_tag || tag.starts_with("en-");
}

/// Checks the texts of a catalogue against those of English.
bool check(const Catalogue& catalogue, const Catalogue& english, DiagnosticSink& sink) {
  bool good = true;
  for (const auto& [key, text] : catalogue.texts) {
    if (key.starts_with(written_words)) continue;  // what a person wrote is no pattern
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

struct Words::Text {
  std::string pattern;
  std::shared_ptr<const icu::Locale> locale;
  std::string language;                        ///< if it is another than the page's
  std::unique_ptr<icu::MessageFormat> format;  ///< made when first said
};

struct Words::Parts {
  std::string language;
  bool right_to_left = false;
  std::array<Text, phrase_count> phrases;
  std::map<std::string, Text, std::less<>> terms;
  std::map<std::string, std::string, std::less<>> written;
};

namespace {
/// A text as the first catalogue of a chain has it; null if none does.
struct FoundText {
  const Catalogue* from = nullptr;
  const std::string* text = nullptr;
};
FoundText find(const CatalogueChain& chain, const std::string& key) {
  for (const Catalogue* const catalogue : chain.catalogues) {
    const auto found = catalogue->texts.find(key);
    if (found != catalogue->texts.end()) return {catalogue, &found->second.value};
  }
  return {};
}
}  // namespace

Words::Words(std::unique_ptr<Parts> parts) : parts_(std::move(parts)) {}
Words::~Words() = default;

const std::string& Words::language() const {
  return parts_->language;
}
bool Words::right_to_left() const {
  return parts_->right_to_left;
}

std::unique_ptr<Words> Words::open(const CatalogueChain& chain, DiagnosticSink& sink, Check which) {
  const Catalogue& last = *chain.catalogues.back();
  bool good = true;
  std::map<const Catalogue*, std::shared_ptr<const icu::Locale>> locales;
  auto parts = std::make_unique<Parts>();
  parts->language = chain.language;
  parts->right_to_left = furnish::right_to_left(chain.language);
  for (const Catalogue* const catalogue : chain.catalogues) {
    if (which == Check::all || !catalogue->shipped) good = check(*catalogue, last, sink) && good;
    locales[catalogue] = std::make_shared<const icu::Locale>(locale_of(catalogue->language));
    for (const auto& [key, text] : catalogue->texts) {
      if (!key.starts_with(written_words)) continue;
      parts->written.emplace(key.substr(written_words.size()), text.value);
    }
  }
  std::size_t in_english = 0;
  std::string first_in_english;
  const auto take = [&](const std::string& key, Text& into) {
    const FoundText found = find(chain, key);
    if (found.from == nullptr) {
      sink.error("missing-words", last.span, fmt::format("English has no {}", key));
      good = false;
      return;
    }
    into = {*found.text, locales[found.from], {}, nullptr};
    if (is_english(found.from->language) && !is_english(chain.catalogues.front()->language)) {
      into.language = found.from->language;
      if (in_english++ == 0) first_in_english = key;
    }
  };
  for (std::size_t i = 0; i < phrase_count; ++i) {
    take(std::string(phrases) + std::string(key_of(static_cast<Phrase>(i))), parts->phrases.at(i));
  }
  for (const std::string& key : term_keys()) take(key, parts->terms[key]);
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
  return said(parts_->phrases.at(static_cast<std::size_t>(phrase)), arguments);
}

std::string Words::term(std::string_view section, std::string_view key,
                        const std::vector<WordArgument>& arguments) const {
  const auto found = parts_->terms.find(fmt::format("{}.{}", section, key));
  if (found == parts_->terms.end()) {
    throw std::logic_error(fmt::format("no term {}.{}", section, key));
  }
  return said(found->second, arguments);
}

std::string Words::written(std::string_view text) const {
  const auto known = parts_->written.find(text);
  if (known != parts_->written.end()) return known->second;
  if (turns_direction(text)) return isolated(without_isolates(text));
  return parts_->right_to_left && runs_from_left(text) ? isolated(text) : std::string(text);
}

std::optional<std::string> Words::translated(std::string_view text, const Words* salons) const {
  const auto known = parts_->written.find(text);
  if (known != parts_->written.end()) return known->second;
  constexpr std::string_view section = "stock";
  const StockPhrase* phrase = find_stock(text);
  if (phrase == nullptr && salons != nullptr) {
    const auto found = std::ranges::find_if(stock_phrases(), [&](const StockPhrase& row) {
      return same_phrase(text, salons->term(section, stock_key(row.words)));
    });
    if (found != stock_phrases().end()) phrase = &*found;
  }
  if (phrase == nullptr) return std::nullopt;
  // A catalogue that lacks the phrase says it in English.
  const auto found = parts_->terms.find(fmt::format("{}.{}", section, stock_key(phrase->words)));
  if (found != parts_->terms.end() && !found->second.language.empty()) return std::nullopt;
  std::string said = term(section, stock_key(phrase->words));
  if (!is_english(language()) && said == phrase->words) return std::nullopt;
  return said;
}

std::string Words::said(Text& text, const std::vector<WordArgument>& arguments) const {
  const auto as_read = [&](std::string out) {
    return text.language.empty() ? out : said_in(text.language, out);
  };
  // Without a place and without an apostrophe, which quotes, a pattern is what it says.
  if (text.pattern.find_first_of("{'") == std::string::npos) return as_read(text.pattern);
  UErrorCode code = U_ZERO_ERROR;
  if (!text.format) {
    text.format = std::make_unique<icu::MessageFormat>(icu::UnicodeString::fromUTF8(text.pattern),
                                                       *text.locale, code);
  }
  std::vector<icu::Formattable> values;
  for (const WordArgument& argument : arguments) {
    if (const auto* words = std::get_if<std::string>(&argument)) {
      std::string shown = *words;
      if (!shown.starts_with(first_strong_isolate)) {
        if (turns_what_follows(shown)) {
          shown = isolated(without_isolates(shown));
        } else if (parts_->right_to_left && runs_from_left(shown)) {
          shown = isolated(shown);
        }
      }
      values.emplace_back(icu::UnicodeString::fromUTF8(shown));
    } else {
      values.emplace_back(static_cast<std::int32_t>(std::get<int>(argument)));
    }
  }
  icu::UnicodeString out;
  icu::FieldPosition ignored;
  text.format->format(values.data(), static_cast<std::int32_t>(values.size()), out, ignored, code);
  // open() has checked the pattern, so what fails is the caller's arguments.
  if (U_FAILURE(code)) throw std::logic_error("phrase " + text.pattern);
  std::string result;
  out.toUTF8String(result);
  return as_read(std::move(result));
}
}  // namespace furnish
