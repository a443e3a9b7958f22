#include <catch2/catch.hpp>

#include <map>
#include <string>
#include <vector>

#include "base/text.h"
#include "sheet/shipped_words.h"

// What an owner is told to do in an emergency is held to its source, in every language: the words a
// sentence must have, and those that would make it wrong.

namespace furnish::test {
namespace {
struct Said {
  std::vector<std::string> must, never;
};

void check(const std::string& text, const Said& said) {
  for (const std::string& word : said.must) {
    CAPTURE(text, word);
    CHECK(text.find(word) != std::string::npos);
  }
  for (const std::string& word : said.never) {
    CAPTURE(text, word);
    CHECK(text.find(word) == std::string::npos);
  }
}
}  // namespace

// Royal Veterinary College, VetCompass, 2023: "cool first, transport second"; cold water, or water
// of any temperature below the dog's poured on with moving air; wet towels alone are not enough.
TEST_CASE("an overheated dog is cooled at once, fast, with water and moving air, and then driven") {
  const std::map<std::string, Said> table{
      {"en",
       {{"Cool Rex at once and fast", "pour", "water", "fan", "breeze", "Wet towels are not enough",
         "vet while you cool", "drive after"},
        {"slow", "gradual", "tepid", "lukewarm", "Cool down"}}},
      {"es",
       {{"Enfríe a Rex", "enseguida", "deprisa", "agua", "ventilador", "brisa",
         "toallas mojadas no bastan", "veterinario mientras", "después"},
        {"poco a poco", "despacio", "lent", "tibia"}}},
      {"fr",
       {{"Refroidissez Rex", "tout de suite", "vite", "eau", "ventilateur", "courant d’air",
         "serviettes mouillées ne suffisent pas", "vétérinaire pendant", "après"},
        {"lentement", "doucement", "petit à petit", "tiède"}}},
      {"de",
       {{"Kühlen Sie Rex", "sofort", "schnell", "Wasser", "Ventilator", "Wind",
         "Nasse Tücher reichen nicht", "dabei Ihren Tierarzt", "danach"},
        {"langsam", "nach und nach", "allmählich", "lauwarm", "Sie ab"}}},
      {"pt",
       {{"Resfrie Rex", "já", "depressa", "água", "ventilador", "vento",
         "Toalhas molhadas não bastam", "veterinário enquanto", "depois"},
        {"devagar", "aos poucos", "lent", "morna"}}},
      {"vi",
       {{"Làm mát Rex", "ngay", "thật nhanh", "nước", "quạt", "gió", "Đắp khăn ướt là không đủ",
         "bác sĩ thú y trong lúc", "sau"},
        {"từ từ", "chậm", "nước ấm"}}},
      {"ar",
       {{"برّدوا جسم", "فورًا", "بسرعة", "ماءً", "مروحة", "هواء متحرك", "المناشف المبللة لا تكفي",
         "البيطري أثناء", "بعد ذلك"},
        {"ببطء", "تدريج", "فاتر"}}},
  };
  for (const auto& [language, said] : table) {
    CAPTURE(language);
    check(ShippedWords(language).say(Phrase::watch_heat_do, {std::string("Rex")}), said);
  }
}

TEST_CASE("no page tells anybody to be slow") {
  const std::map<std::string, std::vector<std::string>> slow{
      {"en", {"slowly"}},
      {"es", {"despacio", "lentamente", "poco a poco"}},
      {"fr", {"lentement"}},
      {"de", {"langsam"}},
      {"pt", {"devagar", "lentamente"}},
      {"vi", {"từ từ", "làm chậm"}},
      {"ar", {"ببطء"}}};
  for (const auto& [language, words] : slow) {
    const ShippedWords shipped(language);
    for (const auto& [key, text] : shipped.chain().catalogues.front()->texts) {
      for (const std::string& word : words) {
        CAPTURE(language, key, text.value);
        CHECK(lower_ascii(text.value).find(word) == std::string::npos);
      }
    }
  }
}
}  // namespace furnish::test
