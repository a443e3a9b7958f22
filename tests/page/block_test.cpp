#include "page/block.h"

#include <catch2/catch.hpp>

#include "page/run_in_alerts.h"
#include "support.h"

using namespace furnish;

namespace {
/// Places a block in the height it wants, or in a given one.
Frame placed(const Block& block, const Setting& setting, Length width, Length height = {}) {
  Frame frame;
  frame.size = {width + Length::mm(20), Length::mm(500)};
  const Extent extent = block.measure(width, setting);
  block.place({{Length::mm(10), Length::mm(10)}, {width, std::max(height, extent.wanted)}}, setting,
              frame);
  return frame;
}

const TextMark* find(const Frame& frame, const std::string& text) {
  for (const TextMark* mark : test::marks_of<TextMark>(frame)) {
    if (mark->line->text() == text) return mark;
  }
  return nullptr;
}

Length baseline_of(const Frame& frame, const std::string& text) {
  const TextMark* mark = find(frame, text);
  INFO(text);
  REQUIRE(mark);
  return mark->baseline.y;
}

BlockPtr body(std::string text) {
  return paragraph(std::move(text));
}
}  // namespace

TEST_CASE("plain Latin stays within what paragraphs take for its ink", "[page][block]") {
  test::Desk desk;
  for (const Face face : {Face::regular, Face::semibold, Face::bold, Face::italic}) {
    std::string all;
    for (char c = '!'; c <= '~'; ++c) all += c;
    const auto shaped =
        desk.shaper.shape({{all, face, Role::body, TypeSize::quarters(400)}}, {}, Breaking::never);
    CHECK(-shaped->lines[0]->ink().top() <= Length::points(78));
    CHECK(shaped->lines[0]->ink().bottom() <= Length::points(26));
  }
}

TEST_CASE("lines of a paragraph never touch, whatever the script", "[page][block]") {
  test::Desk desk;
  const Setting setting = desk.setting(test::reading_roles());
  for (const char* text : {"Ấp Ủ gpjỵ Ấp Ủ gpjỵ Ấp Ủ gpjỵ", "plain gjpqy|() plain gjpqy|()",
                           "Ấp gjp ÅÅÅ gjp ريكس الصغير gjp Ấp ريكس"}) {
    for (const double leading : {0.9, 1.0, 1.24}) {
      const Paragraph block(text, {.leading = leading});
      const Frame frame = placed(block, setting, Length::mm(26));
      const auto marks = test::marks_of<TextMark>(frame);
      REQUIRE(marks.size() > 1);
      for (std::size_t i = 1; i < marks.size(); ++i) {
        CHECK_FALSE(overlap(test::ink_on_page(*marks[i - 1]), test::ink_on_page(*marks[i])));
      }
      const Rect box{{Length::mm(10), Length::mm(10)},
                     {Length::mm(26), block.measure(Length::mm(26), setting).wanted}};
      for (const TextMark* mark : marks) {
        CHECK(test::ink_on_page(*mark).top() >= box.top());
        CHECK(test::ink_on_page(*mark).bottom() <= box.bottom());
      }
    }
  }
}

TEST_CASE("labels, texts and alerts share their edges and baselines", "[page][block]") {
  test::Desk desk;
  const Setting setting = desk.setting(test::reading_roles());
  auto edge = std::make_shared<LabelColumn>();
  const Column column(
      {std::make_shared<Alerts>(std::vector<AlertEntry>{{Gravity::row, "DANGER", "Jumps.", "Hold."},
                                                        {Gravity::panel, "WARNING", "Snaps.", ""},
                                                        {Gravity::bar, "CAUTION", "Hums.", ""},
                                                        {Gravity::hairline, "NOTICE", "Bows.", ""}},
                                edge),
       std::make_shared<Rows>(
           std::vector<LabelRow>{{"Bath", body("Oat.")}, {"Not wanted", body("Hat.")}}, edge)});
  const Frame frame = placed(column, setting, Length::mm(128));
  CHECK(baseline_of(frame, "DANGER") == baseline_of(frame, "Jumps."));
  CHECK(baseline_of(frame, "Bath") == baseline_of(frame, "Oat."));
  const Length text_edge = Length::mm(10) + edge->width(Length::mm(128), setting);
  for (const char* text : {"Hold.", "Oat.", "Hat."})
    CHECK(find(frame, text)->baseline.x == text_edge);
  // Large letters stand at the edge with their ink.
  for (const char* text : {"Jumps.", "Snaps.", "Bows."}) {
    INFO(text);
    const TextMark& mark = *find(frame, text);
    CHECK(mark.baseline.x <= text_edge);
    CHECK(test::ink_on_page(mark).left() <= text_edge);
    CHECK(test::ink_on_page(mark).left() > text_edge - Length::mm(0.5));
  }
  CHECK(find(frame, "Jumps.")->ink == Ink::paper);
  CHECK(find(frame, "WARNING")->ink == Ink::paper);
  CHECK(find(frame, "Snaps.")->ink == Ink::text);
  // White text lies on black.
  for (const TextMark* mark : test::marks_of<TextMark>(frame)) {
    if (mark->ink != Ink::paper) continue;
    bool on_black = false;
    for (const FillMark* fill : test::marks_of<FillMark>(frame)) {
      on_black = on_black || contains(fill->area, test::ink_on_page(*mark));
    }
    CHECK(on_black);
  }
}

TEST_CASE("words that run into their statements keep clear of them", "[page][block]") {
  test::Desk desk;
  const Setting setting = desk.setting(test::reading_roles());
  for (int width = 60; width <= 180; width += 15) {
    INFO(width);
    const RunInAlerts alerts({{Gravity::row, "DANGER", "Jumps at the door.", "Hold the lead."},
                              {Gravity::panel, "WARNING", "Snaps when a foot is held.", "Two."},
                              {Gravity::bar, "CAUTION", "Hums.", ""},
                              {Gravity::hairline, "NOTICE", "Bows to Ấp Ủ.", "Bow."}},
                             rule_name);
    const Frame frame = placed(alerts, setting, Length::mm(width));
    CHECK(test::tags_balanced(frame));
    const auto texts = test::marks_of<TextMark>(frame);
    const auto fills = test::marks_of<FillMark>(frame);
    for (std::size_t i = 0; i < texts.size(); ++i) {
      const Rect ink = test::ink_on_page(*texts[i]);
      CHECK(ink.right() <= Length::mm(10 + width));
      for (std::size_t j = 0; j < i; ++j) {
        CHECK_FALSE(overlap(ink, test::ink_on_page(*texts[j])));
      }
      for (const FillMark* fill : fills) {
        CHECK((contains(fill->area, ink) == (texts[i]->ink == Ink::paper) ||
               !overlap(fill->area, ink)));
        if (overlap(fill->area, ink)) CHECK(texts[i]->ink == Ink::paper);
      }
    }
    CHECK(test::text_of(frame).starts_with("DANGER Jumps"));
  }
}

TEST_CASE("columns share spare room between their gaps", "[page][block]") {
  test::Desk desk;
  const Setting setting = desk.setting(test::reading_roles());
  const Column column({body("one"), std::make_shared<Gap>(1, 0.5, 1), body("two"),
                       std::make_shared<Gap>(1, 0.5, 1), body("three")});
  const Extent extent = column.measure(Length::mm(100), setting);
  CHECK(extent.wanted - extent.least == Length::mm(4));
  CHECK(extent.stretch == 2);
  const Frame as_designed = placed(column, setting, Length::mm(100)),
              roomy = placed(column, setting, Length::mm(100), extent.wanted + Length::mm(10));
  const auto step = [&](const Frame& frame, const char* from, const char* to) {
    return baseline_of(frame, to) - baseline_of(frame, from);
  };
  CHECK(step(roomy, "one", "two") - step(as_designed, "one", "two") == Length::mm(5));
  CHECK(step(roomy, "two", "three") - step(as_designed, "two", "three") == Length::mm(5));
}

TEST_CASE("cells side by side share a baseline and the whole width", "[page][block]") {
  test::Desk desk;
  const Setting setting = desk.setting(test::reading_roles());
  const BlockPtr name = paragraph("Rex", {.role = Role::title}), facts = body("a\nb");
  const Beside first({{name, Length::mm(40)}, {facts}}, Length::mm(4)),
      last({{name, Length::mm(40)}, {facts}}, Length::mm(4), Beside::Line::last_baseline);
  const Frame at_first = placed(first, setting, Length::mm(100)),
              at_last = placed(last, setting, Length::mm(100));
  CHECK(baseline_of(at_first, "a") == baseline_of(at_first, "Rex"));
  CHECK(baseline_of(at_last, "b") == baseline_of(at_last, "Rex"));
  CHECK(find(at_first, "a")->baseline.x == Length::mm(54));
  // What is fixed and does not fit is said, not clipped.
  const Beside wide({{name, Length::mm(80)}, {facts, Length::mm(30)}}, Length::mm(4));
  CHECK(wide.measure(Length::mm(100), setting).too_wide >= Length::mm(14));
}

TEST_CASE("two ends of a line stand below each other if they must", "[page][block]") {
  test::Desk desk;
  const Setting setting = desk.setting(test::reading_roles());
  const BlockPtr right = paragraph("24 November", {.align = Align::end});
  const Ends ends(body("Lantern Street"), right, Length::mm(4));
  const Frame wide = placed(ends, setting, Length::mm(120));
  CHECK(baseline_of(wide, "Lantern Street") == baseline_of(wide, "24 November"));
  const TextMark& end = *find(wide, "24 November");
  CHECK(end.baseline.x + end.line->width() == Length::mm(130));
  const Frame narrow = placed(ends, setting, Length::mm(44));
  CHECK(baseline_of(narrow, "Lantern Street") < baseline_of(narrow, "24 November"));
}

TEST_CASE("boxes to tick keep their labels apart at every width", "[page][block]") {
  test::Desk desk;
  const Setting setting = desk.setting(test::reading_roles());
  for (const auto where : {TickRow::Labels::below, TickRow::Labels::right}) {
    const TickRow ticks({"In", "Comb-out", "Bath", "Nails", "Dry", "Clip", "Finish", "Check"},
                        where);
    std::size_t most_rows = 0;
    for (int width = 30; width <= 200; width += 5) {
      INFO(width);
      const Frame frame = placed(ticks, setting, Length::mm(width));
      const auto labels = test::marks_of<TextMark>(frame);
      REQUIRE(labels.size() == 8);
      REQUIRE(test::marks_of<PathMark>(frame).size() == 8);
      std::set<Length> rows;
      for (std::size_t i = 0; i < labels.size(); ++i) {
        rows.insert(labels[i]->baseline.y);
        REQUIRE(labels[i]->baseline.x + labels[i]->line->width() <= Length::mm(10 + width));
        for (std::size_t j = 0; j < i; ++j) {
          REQUIRE_FALSE(overlap(test::ink_on_page(*labels[i]), test::ink_on_page(*labels[j])));
        }
      }
      most_rows = std::max(most_rows, rows.size());
      if (width == 200) CHECK(rows.size() == 1);
    }
    CHECK(most_rows > 1);
  }
}

TEST_CASE("a blank line leaves room for a hand", "[page][block]") {
  test::Desk desk;
  const Setting setting = desk.setting(test::reading_roles());
  CHECK(BlankLine().measure(Length::mm(80), setting).wanted >= Length::mm(7));
  CHECK(BlankLine("", 3).measure(Length::mm(80), setting).wanted == Length::mm(21));
  const Frame frame = placed(BlankLine("Initials"), setting, Length::mm(80));
  const auto strokes = test::marks_of<StrokeMark>(frame);
  REQUIRE(strokes.size() == 1);
  const TextMark& label = *find(frame, "Initials");
  CHECK(strokes[0]->from.x > label.baseline.x + label.line->width());
  CHECK(strokes[0]->to.x == Length::mm(90));
  CHECK(strokes[0]->from.y > label.baseline.y);
}

TEST_CASE("rows of a table have as many columns and no blank cell, on one baseline",
          "[page][block]") {
  test::Desk desk;
  const Setting setting = desk.setting(test::reading_roles());
  using Kind = TableColumn::Kind;
  const Table table(
      {{"", Kind::natural},
       {.head = "Part", .heads_rows = true},
       {"Tool"},
       {"Leaves", Kind::natural}},
      {{{{{{"1"}}}, {{{"Ears"}}}, {{{"thinners, straight edge, folded over"}}}, {{{"20 mm"}}}}},
       {{{{{"2"}}, true}, {{{"Chest"}}}}}});
  const Frame frame = placed(table, setting, Length::mm(110));
  CHECK(test::tags_balanced(frame));
  std::vector<int> columns, heads;
  for (const Mark& mark : frame.marks) {
    const auto* tag = std::get_if<OpenTag>(&mark);
    if (!tag) continue;
    if (tag->role == Structure::row) {
      columns.push_back(0);
      heads.push_back(0);
    }
    const bool head = tag->role == Structure::header_cell;
    if (head || tag->role == Structure::cell) columns.back() += tag->columns;
    if (head) ++heads.back();
  }
  CHECK(columns == std::vector<int>{4, 4, 4});
  // The first head is that of the number as well.
  CHECK(heads == std::vector<int>{3, 1, 1});
  CHECK(baseline_of(frame, "1") == baseline_of(frame, "Ears"));
  CHECK(baseline_of(frame, "1") == baseline_of(frame, "20 mm"));
  CHECK(find(frame, "Part")->baseline.x == find(frame, "Ears")->baseline.x);
  CHECK(find(frame, "Chest")->baseline.x == find(frame, "Ears")->baseline.x);
  CHECK(test::marks_of<PathMark>(frame).size() == 1);  // the diamond
  // Columns that cannot be are said.
  const Table wide({{"a", Kind::fixed, Length::mm(80)}, {"b", Kind::fixed, Length::mm(80)}}, {});
  CHECK(wide.measure(Length::mm(100), setting).too_wide >= Length::mm(60));
}

TEST_CASE("a list marks its items with a path and no letter", "[page][block]") {
  test::Desk desk;
  const Setting setting = desk.setting(test::reading_roles());
  const BulletList list({{body("Different for him:"), Marker::none}, {body("breeches full")}});
  const Frame frame = placed(list, setting, Length::mm(90));
  CHECK(test::text_of(frame) == "Different for him: breeches full");
  CHECK(test::marks_of<PathMark>(frame).size() == 1);
  CHECK(find(frame, "breeches full")->baseline.x > find(frame, "Different for him:")->baseline.x);
}

TEST_CASE("a drawing keeps its shape and stands in the middle", "[page][block]") {
  test::Desk desk;
  const Setting setting = desk.setting(test::reading_roles());
  Rect drawn;
  const Canvas canvas(
      2.0, Length::mm(20), Length::mm(60), 3,
      [&](const Rect& area, const Setting&, Frame&) { drawn = area; }, "a dog from the side");
  CHECK(canvas.measure(Length::mm(100), setting).least == Length::mm(20));
  const Frame frame = placed(canvas, setting, Length::mm(100), Length::mm(70));
  CHECK(drawn.size.width == Length::mm(100));
  CHECK(drawn.size.height == Length::mm(50));
  CHECK(drawn.top() == Length::mm(20));
  REQUIRE(test::marks_of<OpenTag>(frame).size() == 1);
  CHECK(test::marks_of<OpenTag>(frame)[0]->alt == "a dog from the side");
  CHECK(canvas.measure(Length::mm(30), setting).too_wide == Length::mm(10));
}
