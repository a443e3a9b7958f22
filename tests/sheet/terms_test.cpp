#include "sheet/terms.h"

#include <catch2/catch.hpp>

#include "base/text.h"
#include "sheet/desk.h"
#include "sheet/figure_text.h"
#include "sheet/shipped_words.h"
#include "sheet/shown.h"
#include "trade/finish.h"
#include "trade/mats.h"
#include "trade/method.h"

namespace furnish::test {

// What a file may say and a message names is English in the tables of trade/; on sheets it is the
// catalogue's. They may not part.
TEST_CASE("in English the catalogue says what the trade's tables say", "[terms]") {
  const ShippedWords english("en");
  const Words& words = english.words();
  for (const RegionInfo& row : regions()) {
    for (const Side side : {Side::both, Side::left, Side::right}) {
      const Place place{row.region, side};
      CHECK(place_name(place, words) == to_text(place));
    }
  }
  for (const GroupInfo& row : groups()) CHECK(group_name(row.group, words) == row.key);
  for (const CoatInfo& row : coats()) {
    const std::string key(row.key);
    CHECK(coat_name(row.coat, words) == (row.coat == Coat::hairless ? key : key + " coat"));
  }
  for (const std::string_view word : condition_words()) {
    CHECK(condition_name(*parse_condition(word), words) == word);
  }
  for (int grade = 1; grade <= worst_mats; ++grade) {
    CHECK(mat_grade_text(grade, words) == mat_grade(grade));
  }
  for (const FinishInfo& row : finishes()) {
    CHECK(finish_text(row.part, row.words, words) == row.words);
  }
}

TEST_CASE("lines for a newer groomer say how, without a full stop", "[terms]") {
  const ShippedWords english("en");
  const auto line = [&](std::size_t i) {
    return how_text(static_cast<Method>(i), english.words());
  };
  CHECK(how_text(Method::pads, english.words()).find("never straight in") != std::string::npos);
  for (std::size_t i = 0; i < method_count; ++i) {
    CHECK_FALSE(line(i).empty());
    CHECK_FALSE(line(i).ends_with('.'));
    // The table says which lines have all of another in them.
    for (std::size_t j = 0; j < method_count; ++j) {
      INFO(line(i) << " / " << line(j));
      CHECK(says(static_cast<Method>(i), static_cast<Method>(j)) ==
            (line(i).find(line(j)) != std::string::npos));
    }
  }
}

TEST_CASE("free words are left as they are, the trade's are not", "[terms]") {
  const ShippedWords german("de");
  CHECK(finish_text(FinishPart::feet, "cat foot", german.words()) == "Katzenpfote");
  CHECK(finish_text(FinishPart::feet, "cat foot, a little longer", german.words()) ==
        "cat foot, a little longer");
  CHECK(finish_text(FinishPart::extras, "cat foot", german.words()) == "cat foot");
}

TEST_CASE("quantities have the reader's decimal sign and units", "[shown]") {
  using std::chrono::minutes;
  Desk table = desk("[pet]\nname = \"Rex\"\n");
  table.speak("de");
  CHECK(shown(Mass::kg(4.6), table.voice()) == "4,6\u202Fkg");
  CHECK(shown(Length::mm(3.2), table.voice()) == "3,2\u202Fmm");
  CHECK(shown(minutes(90), table.voice()) == "1\u202Fh\u00A030\u202Fmin");
  CHECK(shown(LengthRange{Length::inches(1, 2), Length::inches(5, 4)}, Units::us, table.voice()) ==
        "½–1¼\u202FZoll");
  table.speak("vi");
  CHECK(shown(minutes(4), table.voice()) == "4\u202Fphút");
  // From right to left a range and a mixed number keep their order (UAX #9, left-to-right isolate).
  table.speak("ar");
  CHECK(shown(Mass::kg(4.6), table.voice()) == "4.6\u202Fكغ");
  CHECK(shown(LengthRange{13_mm, 25_mm}, table.voice()) == "\u206613–25\u2069\u202Fمم");
  CHECK(shown(LengthRange{Length::inches(9, 8), Length::inches(9, 8)}, Units::us, table.voice()) ==
        "\u20661⅛\u2069\u202Fبوصة");
}

TEST_CASE("the figure is told in words: build, coat, the trim, what to mind", "[figure]") {
  Desk table = desk("[pet]\nname = \"Rex\"\n");
  FigureInput figure;
  figure.coat = Coat::curly;
  figure.build.ears = EarType::drop;
  figure.build.tail = TailType::otter;
  figure.left[static_cast<std::size_t>(Region::back)] = LengthRange{13_mm, 25_mm};
  figure.tools[static_cast<std::size_t>(Region::back)] = ToolKind::comb;
  figure.left[static_cast<std::size_t>(Region::chest)] = LengthRange{30_mm, 30_mm};
  figure.spots = {{{Region::hocks, Side::left}, SpotKind::avoid, 0},
                  {{Region::belly, Side::left}, SpotKind::finding, 2}};
  CHECK(without_space(figure_text(figure, "Rex", table.voice())) ==
        without_space("Rex, seen from the left, curly coat, drop ears, otter tail. Coat left: back "
                      "13–25 mm, guard comb; chest 30 mm. no tool on: left hock. finding B: belly, "
                      "left."));
  table.speak("es");
  CHECK(without_space(figure_text(figure, "Rex", table.voice())) ==
        without_space("Rex, visto desde la izquierda, pelo rizado, orejas caídas, cola de nutria. "
                      "Pelo que queda: dorso 13–25 mm, peine guía; pecho 30 mm. sin herramienta "
                      "en: corvejón izquierdo. hallazgo B: vientre, izquierda."));
}
}  // namespace furnish::test
