#include <map>
#include <string>
#include <utility>
#include <vector>

#include "page/shaped_line.h"
#include "sheet/desk.h"
#include "sheet/must_say.h"
#include "sheet/parts.h"
#include "sheet/shipped_words.h"

// Words that were once misread in a way that harms, in every language: what a sentence must say and
// must not. What they mean is common practice, no source, unless one is named.

namespace furnish::test {
namespace {
using Table = std::map<std::string, MustSay>;

void check_rule(const Table& table, std::string_view key) {
  CHECK(table.size() == 7);
  for (const auto& [language, said] : table) {
    CAPTURE(language, key);
    check(ShippedWords(language).words().term(
              "rule", key,
              {std::string("QQ"), std::string("RR"), std::string("SS"), std::string("TT")}),
          said);
  }
}
}  // namespace

// "Never on" of one sentence and "the head." of the next were read as one. (UAX #9: an isolate is
// laid as a whole, and two of them from right to left.)
TEST_CASE("two sentences of a salon never begin beside each other on a page from right to left",
          "[safe-words]") {
  std::size_t apart = 0;
  for (const char* salon : {"lantern-street", "us-corner"}) {
    Desk table(sample(salon));
    table.speak("ar");
    for (const std::string& key : table.pets()) {
      const Kennel kennel = table.kennel(key);
      for (const auto& page : {table.card(kennel), table.style(kennel)}) {
        INFO(key << ": " << table.said());
        REQUIRE(page);
        for (const Mark& mark : page->page.frame.marks) {
          const auto* const text = std::get_if<TextMark>(&mark);
          if (text == nullptr) continue;
          INFO(text->line->text());
          CHECK(text->line->text().find("\u2069 \u2068") == std::string::npos);
          apart += text->line->text().find("\u2068") != std::string::npos;
        }
      }
    }
  }
  CHECK(apart > 200);
}

TEST_CASE("a full stop ends the sentence it belongs to", "[safe-words]") {
  CHECK(sentence("نظيرتها، \u2066#7F\u2069") == "نظيرتها، \u2066#7F\u2069.");
  CHECK(sentence("\u2068Snaps\u2069") == "\u2068Snaps.\u2069");
}

// A knot in the coat is combed; a lump in the skin is a vet's.
TEST_CASE("a lump is never called as a mat is", "[safe-words]") {
  const Table table{{"en", {{"ump"}, {"mat", "knot"}}}, {"es", {{"ulto"}, {"nudo"}}},
                    {"fr", {{"rosseur"}, {"nœud"}}},    {"de", {{"noten"}, {"Knötchen", "ilz"}}},
                    {"pt", {{"aroço"}, {" nó", "Nó"}}}, {"vi", {{"ục u"}, {"bết"}}},
                    {"ar", {{"كتل"}, {"تلبّد"}}}};
  for (const auto& [language, said] : table) {
    CAPTURE(language);
    const ShippedWords shipped(language);
    const Words& words = shipped.words();
    check(words.say(Phrase::watch_skin), said);
    check(words.say(Phrase::if_wound_head), said);
    check(words.term("stock", "lump"), said);
    check(words.term("stock", "lump-pea-sized"), said);
    const std::string side = "lying on either side will do; mind lumps";
    // Arabic has them as "الكتل".
    check(words.written(side), said);
  }
  // In German a lump is a knot of the skin, so mats are called nothing like it.
  const ShippedWords german("de");
  for (const char* const grade : {"grade-1", "grade-2", "grade-3", "grade-4"}) {
    check(german.words().term("mats", grade), {{"ilz"}, {"noten", "nöt", "geschnitten"}});
  }
}

// A shaved double coat may come back patchy or not at all: brushed, and not clipped.
TEST_CASE("a double coat is brushed out instead of clipped, not before it", "[safe-words]") {
  check_rule({{"en", {{"brush out instead"}, {"first", "before", "then"}}},
              {"es", {{"en vez de", "cepillar"}, {"antes", "primero"}}},
              {"fr", {{"au lieu de", "brosser"}, {"avant", "d’abord", "plutôt"}}},
              {"de", {{"stattdessen", "bürsten"}, {"vorher", "zuerst", "erst "}}},
              {"pt", {{"em vez disso", "escovar"}, {"antes", "primeiro"}}},
              {"vi", {{"chải", "thay vì"}, {"trước"}}},
              {"ar", {{"سرّح", "بدلاً من"}, {"أولاً", "قبل"}}}},
             "double-coat-short-do");
}

// A band of mat is a tourniquet.
TEST_CASE("a mat all round stops the blood's way, and the dog goes to a vet", "[safe-words]") {
  const Table table{{"en", {{"cut off the blood"}, {}}},
                    {"es", {{"cortar la circulación"}, {"sangre"}}},
                    {"fr", {{"faire garrot"}, {"couper le sang"}}},
                    {"de", {{"Blutzufuhr abschnüren"}, {"das Blut"}}},
                    {"pt", {{"cortar a circulação"}, {"o sangue"}}},
                    {"vi", {{"máu không lưu thông"}, {"chặn máu"}}},
                    {"ar", {{"يحبس الدورة الدموية"}, {"يقطع الدم"}}}};
  check_rule(table, "mat-wound");
  check_rule(table, "mat-wound-past");
  for (const auto& [language, said] : table) {
    if (language == "en" || language == "pt" || language == "de") continue;
    CAPTURE(language);
    check(ShippedWords(language).say(Phrase::note_mat_round_do), said);
  }
}

TEST_CASE("what a reader looks for is heat, not a mild day", "[safe-words]") {
  const Table table{{"en", {{"warm day"}, {}}},
                    {"es", {{"calor"}, {"templad"}}},
                    {"fr", {{"chaud"}, {"doux", "tiède"}}},
                    {"de", {{"warmen Tag"}, {"milden"}}},
                    {"pt", {{"quente"}, {"morn"}}},
                    {"vi", {{"nóng"}, {"ấm"}}},
                    {"ar", {{"حار"}, {"دافئ"}}}};
  for (const auto& [language, said] : table) {
    CAPTURE(language);
    check(ShippedWords(language).say(Phrase::watch_heat), said);
  }
}

TEST_CASE("bare skin is washed in lukewarm water", "[safe-words]") {
  const Table table{{"es", {{"tibia"}, {"caliente"}}}, {"fr", {{"tiède"}, {"chaude"}}},
                    {"de", {{"lauwarm"}, {"heiß"}}},   {"pt", {{"morna"}, {"quente"}}},
                    {"vi", {{"âm ấm"}, {"nước ấm"}}},  {"ar", {{"فاتر"}, {"ساخن"}}}};
  for (const auto& [language, said] : table) {
    CAPTURE(language);
    check(ShippedWords(language).words().written("soft mitt in small circles, lukewarm water"),
          said);
  }
}

// The strip under the tool that is missing reads as the tool to take.
TEST_CASE("what stands in for a missing tool is not taken for it", "[safe-words]") {
  const Table table{{"en", {{"instead of QQ, RR"}, {}}},
                    {"es", {{"en vez de QQ"}, {"por QQ"}}},
                    {"fr", {{"au lieu de QQ"}, {}}},
                    {"de", {{"statt QQ"}, {}}},
                    {"pt", {{"em vez de QQ"}, {}}},
                    {"vi", {{"thay cho QQ"}, {}}},
                    {"ar", {{"بدل "}, {}}}};
  for (const auto& [language, said] : table) {
    CAPTURE(language);
    check(ShippedWords(language).say(Phrase::stands_in, {std::string("QQ"), std::string("RR")}),
          said);
  }
}

TEST_CASE("it is the vaccination that expires, not the disease", "[safe-words]") {
  for (const char* key : {"vaccination-missing", "vaccination-expired", "vaccination-not-yet"}) {
    check_rule({{"en", {{"QQ vaccination"}, {}}},
                {"es", {{"Vacuna de QQ"}, {}}},
                {"fr", {{"Vaccin QQ"}, {}}},
                {"de", {{"Impfung QQ"}, {}}},
                {"pt", {{"Vacina de QQ"}, {}}},
                {"vi", {{"Tiêm phòng QQ"}, {}}},
                {"ar", {{"تطعيم "}, {}}}},
               key);
  }
}

// A dog's tail ends in bone: its hair is cut, not its tip.
TEST_CASE("only the hair of a tail's tip is cut", "[safe-words]") {
  const Table table{{"en", {{"last bone"}, {}}},
                    {"es", {{"último hueso", "pelo de la punta"}, {"cortar la punta"}}},
                    {"fr", {{"dernier os"}, {"couper la pointe"}}},
                    {"de", {{"letzten Schwanzwirbel", "Haar der Spitze"}, {"Spitze fällt"}}},
                    {"pt", {{"último osso", "pelo da ponta"}, {"cortar a ponta"}}},
                    {"vi", {{"đốt xương cuối"}, {}}},
                    {"ar", {{"آخر عظمة"}, {}}}};
  for (const auto& [language, said] : table) {
    CAPTURE(language);
    const ShippedWords shipped(language);
    check(shipped.words().term("how", "tail"), said);
    check(shipped.words().term("how", "tail-tidied"), said);
  }
}

// What was once said of every dog as of a male.
TEST_CASE("no text says whether the dog is a he or a she", "[safe-words]") {
  const std::map<std::string, std::vector<std::string>> gendered{
      {"en", {" he ", " she ", " his ", " her "}},
      {"es", {"abatido", "llegado "}},
      {"fr", {"Venu ", "Abattu"}},
      {"de", {"wie er ", "auf dem er "}},
      {"pt", {"Abatido", "Refresque-o", "Leve-o"}},
      {"ar", {"أعمى", "أصم", "جاء كل"}}};
  for (const auto& [language, words] : gendered) {
    const ShippedWords shipped(language);
    for (const auto& [key, text] : shipped.chain().catalogues.front()->texts) {
      CAPTURE(language, key);
      check(text.value, {{}, words});
    }
  }
}
}  // namespace furnish::test
