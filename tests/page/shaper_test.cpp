#include "page/shaper.h"

#include <pango/pango.h>
#include <catch2/catch.hpp>
#include <random>
#include <set>
#include <sstream>
#include <string>

#include "page/sketch.h"
#include "support.h"

using namespace furnish;

namespace {
std::vector<SizedText> set(std::string text, int quarters = 48, Face face = Face::regular) {
  return {{std::move(text), face, Role::body, TypeSize::quarters(quarters)}};
}

std::string without_spaces(std::string text) {
  std::erase_if(text, [](char c) { return c == ' ' || c == '\n'; });
  return text;
}

bool has_warning(const DiagnosticSink& sink) {
  return !sink.all().empty();
}
}  // namespace

TEST_CASE("lines keep every letter and never exceed their width", "[page][shaper]") {
  test::Desk desk;
  std::mt19937 random(7);
  const auto draw = [&](std::size_t below) { return random() % below; };
  int wrapped = 0;
  for (int round = 0; round < 600; ++round) {
    const std::string text = test::made_up_text(draw, 1 + static_cast<int>(draw(30)));
    const Length width = Length::micrometres(static_cast<std::int64_t>(8'000 + draw(120'000)));
    const auto breaking = draw(2) == 0 ? Breaking::words : Breaking::balanced;
    const auto shaped =
        desk.shaper.shape(set(text, static_cast<int>(28 + draw(60))), width, breaking);
    std::string joined;
    for (const auto& line : shaped->lines) {
      REQUIRE(line->width() <= width);
      joined += line->text();
    }
    REQUIRE(without_spaces(joined) == without_spaces(text));
    if (shaped->lines.size() > 1) ++wrapped;
  }
  CHECK(wrapped > 100);
  CHECK_FALSE(has_warning(desk.sink));
}

TEST_CASE("a word is broken only if it alone is wider than the line", "[page][shaper]") {
  test::Desk desk;
  const auto normal = desk.shaper.shape(set("brush with the lay"), Length::mm(20), Breaking::words);
  CHECK(normal->lines.size() > 1);
  for (const auto& line : normal->lines) {
    std::istringstream words(line->text());
    for (std::string word; words >> word;) {
      INFO(word);
      CHECK(std::set<std::string>{"brush", "with", "the", "lay"}.contains(word));
    }
  }
  const auto broken =
      desk.shaper.shape(set("Donaudampfschifffahrtsgesellschaft"), Length::mm(20), Breaking::words);
  CHECK(broken->lines.size() > 1);
  std::string joined;
  for (const auto& line : broken->lines) joined += line->text();
  CHECK(joined == "Donaudampfschifffahrtsgesellschaft");
  // Nor is a hyphen drawn, which the text would not show: as many glyphs as letters.
  const auto plain =
      desk.shaper.shape(set("hamburgerhamburgerham"), Length::mm(20), Breaking::words);
  REQUIRE(plain->lines.size() > 1);
  for (const auto& line : plain->lines) {
    int glyphs = 0;
    for (const PangoGlyphItem* run : line->glyph_items()) glyphs += run->glyphs->num_glyphs;
    CHECK(glyphs == static_cast<int>(line->text().size()));
  }
}

TEST_CASE("a last line of one short word gets company", "[page][shaper]") {
  test::Desk desk;
  const std::string text = "Lost 0.5 kg since September: tell the owner, ask a vet.";
  const Length whole = desk.shaper.natural_width(set(text));
  const Length narrow = whole - Length::mm(2);
  const auto plain = desk.shaper.shape(set(text), narrow, Breaking::words);
  const auto balanced = desk.shaper.shape(set(text), narrow, Breaking::balanced);
  REQUIRE(plain->lines.size() == 2);
  CHECK(plain->lines[1]->text() == "vet.");
  REQUIRE(balanced->lines.size() == 2);
  CHECK(balanced->lines[1]->text() == "a vet.");
}

TEST_CASE("setting the same text again costs nothing and gives the same", "[page][shaper]") {
  test::Desk desk;
  const auto once = desk.shaper.shape(set("Rex"), Length::mm(50), Breaking::words);
  const auto again = desk.shaper.shape(set("Rex"), Length::mm(50), Breaking::words);
  CHECK(once == again);
  CHECK(desk.shaper.layouts_made() == 1);
  // The key holds lengths: parts that join to the same bytes are still different requests.
  const TypeSize size = TypeSize::quarters(48);
  desk.shaper.shape({{"ab", Face::regular, Role::body, size}, {"c", Face::bold, Role::body, size}},
                    {}, Breaking::never);
  desk.shaper.shape({{"a", Face::regular, Role::body, size}, {"bc", Face::bold, Role::body, size}},
                    {}, Breaking::never);
  CHECK(desk.shaper.layouts_made() == 3);
}

TEST_CASE("between pages only what the last ones asked for is kept", "[page][shaper]") {
  test::Desk desk;
  const auto new_text = [&](const char* text) {
    const std::size_t before = desk.shaper.layouts_made();
    desk.shaper.natural_width(set(text));
    return desk.shaper.layouts_made() > before;
  };
  CHECK(new_text("Ears"));
  CHECK(new_text("Marlow"));
  desk.shaper.forget();
  CHECK_FALSE(new_text("Ears"));
  desk.shaper.forget();
  CHECK_FALSE(new_text("Ears"));
  CHECK(new_text("Marlow"));
}

TEST_CASE("reports go where they are wanted at the time, each once", "[page][shaper]") {
  test::Desk desk;
  DiagnosticSink first, second;
  desk.shaper.report_to(first);
  // U+10FFFD is for private use (Unicode), and no font has it.
  const auto new_text = [&](const char* text) { desk.shaper.natural_width(set(text)); };
  new_text("a \U0010FFFD");
  desk.shaper.report_to(second);
  new_text("b \U0010FFFD");
  CHECK(first.all().size() == 1);
  CHECK(second.all().empty());
  new_text("c \U0010FFFC");
  CHECK(first.all().size() == 1);
  CHECK(second.all().size() == 1);
}

TEST_CASE("widths do not hang on the size: nothing is hinted or rounded", "[page][shaper]") {
  test::Desk desk;
  const std::string text = "45 ml + 455 ml water, 4 min";
  const double at10 = desk.shaper.natural_width(set(text, 40)).in_points() / 10,
               at60 = desk.shaper.natural_width(set(text, 240)).in_points() / 60;
  CHECK(at10 == Approx(at60).epsilon(0.0005));
}

TEST_CASE("figures are of one width", "[page][shaper]") {
  test::Desk desk;
  for (const Face face : {Face::regular, Face::semibold, Face::bold}) {
    const Length one = desk.shaper.natural_width(set("1111", 400, face));
    for (const char digit : {'0', '2', '3', '4', '5', '6', '7', '8', '9'}) {
      CHECK(desk.shaper.natural_width(set(std::string(4, digit), 400, face)) == one);
    }
  }
}

TEST_CASE("runs say what is set in what", "[page][shaper]") {
  test::Desk desk;
  const auto shaped =
      desk.shaper.shape({{"Rex ", Face::regular, Role::body, TypeSize::quarters(48)},
                         {"bold", Face::bold, Role::alert, TypeSize::quarters(80)}},
                        {}, Breaking::never);
  const auto& runs = shaped->lines[0]->runs();
  REQUIRE(runs.size() == 2);
  CHECK((runs[0].begin == 0 && runs[0].end == 4 && runs[1].begin == 4 && runs[1].end == 8));
  CHECK((runs[0].points == 12 && runs[1].points == 20));
  CHECK((runs[0].role == Role::body && runs[1].role == Role::alert));
  CHECK(runs[1].family == "Source Sans 3");
  // The bold face draws capitals of 0.652 em.
  CHECK(runs[1].capital_height.in_points() == Approx(20 * 0.652).margin(0.003));
  CHECK(shaped->lines[0]->points() == 20);
}

TEST_CASE("Latin with accents, Vietnamese, Greek and Cyrillic need no other font",
          "[page][shaper]") {
  test::Desk desk;
  for (const char* text :
       {"Žofka à Besançon", "Ấp Ủ Ễ ộ ữ", "Ωμέγα Πόδι", "Жучка", "½ ¼ ¾ · – ’ ♂ ♀ ×"}) {
    INFO(text);
    const auto shaped = desk.shaper.shape(set(text), {}, Breaking::never);
    for (const ShapedRun& run : shaped->lines[0]->runs()) CHECK(run.family == "Source Sans 3");
  }
  CHECK_FALSE(has_warning(desk.sink));
}

TEST_CASE("right-to-left text is set from the right, in one fallback font", "[page][shaper]") {
  test::Desk desk;
  const std::string text = "ريكس الصغير";
  const auto shaped = desk.shaper.shape(set(text), {}, Breaking::never, {});
  if (has_warning(desk.sink)) {
    WARN("no font with Arabic on this machine; not checked");
    return;
  }
  const ShapedLine& line = *shaped->lines[0];
  CHECK(line.text() == text);
  CHECK(line.from_right());
  std::set<std::string> families;
  for (const ShapedRun& run : line.runs()) families.insert(run.family);
  families.erase("Source Sans 3");  // the space
  CHECK(families.size() == 1);
  // The first letter stands at the right end.
  int x = 0;
  int pen = 0;
  for (PangoGlyphItem* run : line.glyph_items()) {
    if (run->item->offset == 0) {
      pango_glyph_string_index_to_x(run->glyphs, const_cast<char*>(line.whole_text()),
                                    run->item->length, &run->item->analysis, 0, FALSE, &x);
      x += pen;
    }
    pen += pango_glyph_string_get_width(run->glyphs);
  }
  CHECK(x > PANGO_SCALE * line.width().in_points() * 0.9);
}

TEST_CASE("Japanese text has glyphs if a font has them", "[page][shaper]") {
  test::Desk desk;
  desk.shaper.shape(set("ポチ"), {}, Breaking::never);
  if (has_warning(desk.sink)) {
    WARN("no font with Japanese on this machine; not checked");
    return;
  }
  const auto shaped = desk.shaper.shape(set("ポチ"), {}, Breaking::never);
  CHECK(shaped->lines[0]->text() == "ポチ");
}

TEST_CASE("a character that no font has is named once and set as a box", "[page][shaper]") {
  test::Desk desk;
  SourceSet files;
  const SourceSpan from{files.add("pets/rex.toml", "name = \"x\"\n"), {1, 8}, {1, 11}};
  const std::string text = "a\U000F1234b\U000F1234";  // a private place that no font should fill
  const auto shaped = desk.shaper.shape(set(text), Length::mm(50), Breaking::words, from);
  desk.shaper.shape(set(text, 60), Length::mm(50), Breaking::words, from);
  CHECK(shaped->lines[0]->text() == "a\u25A1b\u25A1");
  REQUIRE(desk.sink.all().size() == 1);
  CHECK(desk.sink.all()[0].severity == Severity::warning);
  CHECK(desk.sink.all()[0].message == "no font has the character '\U000F1234' (U+F1234)");
  CHECK(desk.sink.all()[0].span == from);
}

TEST_CASE("what is set does not hang on what was set before", "[page][shaper]") {
  const std::string text = "ريكس Ωκ שלום";
  test::Desk fresh, used;
  used.shaper.shape(set("שלום ☃ ♔ ไทย नमस्ते"), Length::mm(40), Breaking::words);
  const auto a = fresh.shaper.shape(set(text), {}, Breaking::never),
             b = used.shaper.shape(set(text), {}, Breaking::never);
  CHECK(a->lines[0]->width() == b->lines[0]->width());
  REQUIRE(a->lines[0]->runs().size() == b->lines[0]->runs().size());
  for (std::size_t i = 0; i < a->lines[0]->runs().size(); ++i) {
    CHECK(a->lines[0]->runs()[i].family == b->lines[0]->runs()[i].family);
  }
}

TEST_CASE("control characters and bad bytes do no harm", "[page][shaper]") {
  test::Desk desk;
  CHECK(desk.shaper
            .shape(set("a\tb\x01"
                       "c"),
                   {}, Breaking::never)
            ->lines[0]
            ->text() == "a b c");
  const auto two = desk.shaper.shape(set("one\ntwo"), Length::mm(90), Breaking::words);
  REQUIRE(two->lines.size() == 2);
  CHECK(two->lines[1]->text() == "two");
  CHECK(desk.shaper
            .shape(set("a\xFF"
                       "b"),
                   {}, Breaking::never)
            ->lines[0]
            ->text() == "a\u25A1b");
  CHECK(desk.shaper.shape(set(""), Length::mm(10), Breaking::words)->lines.size() == 1);
  CHECK(desk.shaper.shape({}, Length::mm(10), Breaking::words)->lines.size() == 1);
}

TEST_CASE("a draft has the number of lines that setting gives, nearly always", "[page][shaper]") {
  test::Desk desk;
  std::mt19937 random(11);
  const auto draw = [&](std::size_t below) { return random() % below; };
  int same = 0;
  constexpr int rounds = 500;
  for (int round = 0; round < rounds; ++round) {
    const auto parts = set(test::made_up_text(draw, 1 + static_cast<int>(draw(25))));
    const Length width = Length::micrometres(static_cast<std::int64_t>(40'000 + draw(100'000)));
    const auto shaped = desk.shaper.shape(parts, width, Breaking::words);
    const auto drafted = Sketch(parts, *desk.fonts).lines({parts[0].size}, width, Breaking::words);
    CHECK(drafted.size() + 1 >= shaped->lines.size());
    if (drafted.size() == shaped->lines.size()) ++same;
  }
  CHECK(same > rounds * 95 / 100);
}
