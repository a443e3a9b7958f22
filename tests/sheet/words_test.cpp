#include "sheet/words.h"

#include <catch2/catch.hpp>

#include <regex>

#include "base/said_in.h"
#include "sheet/shipped_words.h"

namespace furnish::test {
namespace {
constexpr const char* stand_in = "QQ";

/// What a pattern wants, read off the pattern: a number where it says "plural", else a text.
std::vector<WordArgument> arguments(std::string_view pattern) {
  std::vector<WordArgument> out;
  const std::string text(pattern);
  const std::regex place(R"(\{([0-9])(, plural)?)");
  for (std::sregex_iterator it(text.begin(), text.end(), place), end; it != end; ++it) {
    const auto index = static_cast<std::size_t>((*it)[1].str().front() - '0');
    if (out.size() <= index) out.resize(index + 1, std::string(stand_in));
    if ((*it)[2].matched) out[index] = 7;
  }
  return out;
}
}  // namespace

TEST_CASE("every phrase can be said, and says all it was given") {
  const ShippedWords words("en-GB");
  for (std::size_t i = 0; i < phrase_count; ++i) {
    const auto phrase = static_cast<Phrase>(i);
    const std::string key = "sheet." + std::string(key_of(phrase));
    const std::string& pattern = words.chain().catalogues.back()->texts.at(key).value;
    INFO(key << ": " << pattern);
    const auto given = arguments(pattern);
    std::string said;
    REQUIRE_NOTHROW(said = words.say(phrase, given));
    CHECK_FALSE(said.empty());
    CHECK(said.find_first_of("{}") == std::string::npos);
    std::size_t texts = 0;
    for (const WordArgument& one : given) texts += std::holds_alternative<std::string>(one);
    CHECK((said.find(stand_in) != std::string::npos) == (texts > 0));
  }
}

TEST_CASE("counted things are one or many", "[words]") {
  const ShippedWords words("en-GB");
  CHECK(words.say(Phrase::age_years, {1}) == "1\u00A0year");
  CHECK(words.say(Phrase::age_years, {12}) == "12\u00A0years");
  CHECK(words.say(Phrase::age_weeks, {0}) == "0\u00A0weeks");
  CHECK(words.say(Phrase::due_overdue, {"Friday", 1}) == "Friday, 1\u00A0day overdue");
  CHECK(words.say(Phrase::due_overdue, {"Friday", 3}) == "Friday, 3\u00A0days overdue");
}

TEST_CASE("what a person wrote is said as it was written", "[words]") {
  const ShippedWords words("en-GB");
  // All that ICU's patterns give a meaning to.
  for (const char* text : {"O'Hara {0} # ''", "{", "'", "{1, plural, other {x}}", "قمر", ""}) {
    CHECK(words.say(Phrase::style_only, {text}) == std::string(text) + ", as it is.");
  }
}

TEST_CASE("what a catalogue lacks is said in English, and read aloud in it (ISO 14289-1, 7.2)",
          "[words]") {
  const ShippedWords english("en-GB");
  Catalogue partial;
  partial.language = "nl";
  partial.texts["sheet.mixed-on"] = {"Gemengd op", {}};
  const CatalogueChain chain{"nl", {&partial, english.chain().catalogues.back()}};
  DiagnosticSink sink;
  const auto words = Words::open(chain, sink);
  REQUIRE(words);
  CHECK(words->say(Phrase::mixed_on) == "Gemengd op");
  const std::string age = words->say(Phrase::age_years, {12});
  CHECK(age == said_in("en", "12\u00A0years"));
  CHECK(without_languages(age) == english.say(Phrase::age_years, {12}));
  // A stock phrase that is missing is no translation.
  CHECK(words->term("stock", "lump") == said_in("en", "lump"));
  CHECK_FALSE(words->translated("lump", nullptr));
}

TEST_CASE("signal words are those of ANSI Z535.4", "[words]") {
  const ShippedWords words("en-US");
  CHECK(words.say(Phrase::danger) == "DANGER");
  CHECK(words.say(Phrase::warning) == "WARNING");
  CHECK(words.say(Phrase::caution) == "CAUTION");
  CHECK(words.say(Phrase::notice) == "NOTICE");
}
}  // namespace furnish::test
