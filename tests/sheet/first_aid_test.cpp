#include <catch2/catch.hpp>

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "base/text.h"
#include "sheet/must_say.h"
#include "sheet/shipped_words.h"

// What an owner is told to do in an emergency is held to its source, in every language: the words a
// sentence must have, and those that would make it wrong.

namespace furnish::test {
// Royal Veterinary College, VetCompass, 2023: "cool first, transport second"; cold water, or water
// of any temperature below the dog's poured on with moving air; wet towels alone are not enough.
TEST_CASE("an overheated dog is cooled at once, fast, with water and moving air, and then driven") {
  const std::map<std::string, MustSay> table{
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

// Common practice, no source: the lining of a healthy ear is pale pink. "Pale" alone is what gums
// are in an emergency.
TEST_CASE("healthy ears are pink, and only gums in an emergency are pale") {
  const std::map<std::string, std::pair<MustSay, MustSay>> table{
      {"en", {{{"pale pink"}, {"red"}}, {{"gums", "blue", "pale"}, {"pink"}}}},
      {"es", {{{"rosa"}, {"pálid", "roj"}}, {{"encías", "azul", "pálid"}, {"rosa"}}}},
      {"fr", {{{"rose"}, {"pâle", "rouge"}}, {{"gencives", "bleu", "pâle"}, {"rose"}}}},
      {"de", {{{"hellrosa"}, {"blass", "rot"}}, {{"Zahnfleisch", "blau", "blass"}, {"rosa"}}}},
      {"pt", {{{"rosa"}, {"pálid"}}, {{"gengivas", "azuis", "pálid"}, {"rosa"}}}},
      {"vi", {{{"hồng nhạt"}, {"nhạt màu", "đỏ"}}, {{"nướu", "tím", "nhợt"}, {"hồng"}}}},
      {"ar", {{{"ورديتين"}, {"شاحب"}}, {{"لثة", "زرقاء", "شاحبة"}, {"وردي"}}}}};
  for (const auto& [language, said] : table) {
    CAPTURE(language);
    const ShippedWords words(language);
    check(words.say(Phrase::care_ears), said.first);
    check(words.say(Phrase::if_breath_head), said.second);
  }
}

// Cain and Mauldin, JAVMA 2015: furunculosis shows a median of 2 days (1 to 7) after the bath.
TEST_CASE("what follows a bath is looked for within a week of it, and the vet is told of it") {
  const std::map<std::string, std::pair<MustSay, MustSay>> table{
      {"en", {{{"week of the bath", "back"}, {}}, {{"vet", "bath"}, {"we", "us"}}}},
      {"es", {{{"semana después del baño", "lomo"}, {}}, {{"veterinario", "bañó"}, {}}}},
      {"fr", {{{"semaine après le bain", "dos"}, {"Abattu,"}}, {{"vétérinaire", "bain"}, {}}}},
      {"de", {{{"Woche nach dem Bad", "Rücken"}, {}}, {{"Tierarzt", "gebadet"}, {}}}},
      {"pt", {{{"semana depois do banho", "costas"}, {}}, {{"veterinário", "banho"}, {}}}},
      {"vi", {{{"một tuần sau khi tắm", "lưng"}, {}}, {{"bác sĩ thú y", "tắm"}, {}}}},
      {"ar", {{{"أسبوع من الحمّام", "الظهر"}, {}}, {{"البيطري", "الحمّام"}, {}}}}};
  for (const auto& [language, said] : table) {
    CAPTURE(language);
    const ShippedWords words(language);
    check(words.say(Phrase::watch_bath), said.first);
    check(words.say(Phrase::watch_bath_do), said.second);
  }
}

// Common practice, no source: skin is drawn up into a mat, where scissors cut it; water draws the
// mat tighter.
TEST_CASE("an owner never cuts at a mat and does not wash it") {
  const std::map<std::string, std::vector<std::string>> table{
      {"en", {"Never use scissors", "do not wash", "call us"}},
      {"es", {"No use nunca tijeras", "no lave", "llámenos"}},
      {"fr", {"N’utilisez jamais de ciseaux", "ne lavez pas", "appelez-nous"}},
      {"de", {"nie eine Schere", "waschen Sie das Fell nicht", "rufen Sie uns an"}},
      {"pt", {"Nunca use tesoura", "não dê banho", "ligue para nós"}},
      {"vi", {"Không bao giờ dùng kéo", "đừng tắm", "hãy gọi chúng tôi"}},
      {"ar", {"لا تستعملوا المقص أبدًا", "لا تغسلوا", "فاتصلوا بنا"}}};
  const std::map<std::string, std::vector<std::string>> skin{
      {"en", {"call your vet", "Do not pull, cut or wash"}},
      {"es", {"llame a su veterinario", "No tire, no corte ni lave"}},
      {"fr", {"appelez votre vétérinaire", "Ne tirez pas, ne coupez pas, ne lavez pas"}},
      {"de", {"rufen Sie Ihren Tierarzt an", "Ziehen, schneiden und waschen Sie nicht"}},
      {"pt", {"ligue para o veterinário", "Não puxe, não corte e não lave"}},
      {"vi", {"hãy gọi bác sĩ thú y", "Đừng kéo, cắt hay tắm"}},
      {"ar", {"فاتصلوا بطبيبكم البيطري", "لا تشدّوا ولا تقصّوا ولا تغسلوا"}}};
  for (const auto& [language, words] : table) {
    CAPTURE(language);
    const ShippedWords shipped(language);
    check(shipped.say(Phrase::care_no_scissors), {words, {}});
    check(shipped.say(Phrase::care_no_scissors_skin), {skin.at(language), {}});
  }
}

// Common practice, no source. Five minutes of pressure, then a vet.
TEST_CASE("a nail that bleeds is pressed on, and after five minutes it is a vet's") {
  const std::map<std::string, std::vector<std::string>> vets{
      {"en", {"Press", "5", "vet"}},
      {"es", {"Presionar", "5", "veterinario"}},
      {"fr", {"Comprimer", "5", "vétérinaire"}},
      {"de", {"drücken", "5", "Tierarzt"}},
      {"pt", {"Apertar", "5", "veterinário"}},
      {"vi", {"Ấn giữ", "5", "thú y"}},
      {"ar", {"اضغط", "5", "بيطري"}}};
  for (const auto& [language, words] : vets) {
    CAPTURE(language);
    check(ShippedWords(language).say(Phrase::if_nick), {words, {}});
  }
}

// Common practice, no source: blue or pale gums are a lack of oxygen; nothing is waited for. Where
// it is heat, the Royal Veterinary College, VetCompass, 2023: cooled first, driven second.
TEST_CASE("hard breath stops the work, and a vet sees the dog at once") {
  const std::map<std::string, std::vector<std::string>> vets{
      {"en", {"Dryer off", "stop", "Vet at once", "first cool water", "moving air"}},
      {"es", {"Apagar el secador", "parar", "Veterinario enseguida", "antes agua fresca", "aire"}},
      {"fr",
       {"Couper le séchoir", "arrêter", "Vétérinaire tout de suite", "d’abord eau fraîche", "air"}},
      {"de", {"Föhn aus", "aufhören", "Sofort zum Tierarzt", "zuerst kühles Wasser", "Luft"}},
      {"pt", {"Secador desligado", "parar", "Veterinário já", "primeiro água fresca", "ar"}},
      {"vi", {"Tắt máy sấy", "dừng", "thú y ngay", "trước hết dội nước mát", "gió"}},
      {"ar", {"أطفئ المجفف", "توقّف", "بيطريًا حالاً", "ماء بارد", "هواء متحرك"}}};
  for (const auto& [language, words] : vets) {
    CAPTURE(language);
    check(ShippedWords(language).say(Phrase::if_breath), {words, {}});
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
