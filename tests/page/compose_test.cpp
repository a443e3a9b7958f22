#include <catch2/catch.hpp>
#include <random>

#include "lines_request.h"
#include "page/contrast.h"
#include "support.h"

using namespace furnish;
using test::lines_request;

namespace {
struct Made {
  PageRequest request;
  std::string text;  ///< every word that was put on the page, in reading order
};

/// A page of everything, its texts and their number drawn from `random`.
Made made_up_page(std::mt19937& random) {
  const auto draw = [&](std::size_t below) { return random() % below; };
  const auto words = [&](int least, std::size_t more) {
    return test::made_up_text(draw, least + static_cast<int>(draw(more)));
  };
  Made made;
  const auto say = [&](std::string text) {
    if (!made.text.empty()) made.text += ' ';
    made.text += text;
    return text;
  };
  PageRequest& request = made.request;
  const Paper& paper = papers[draw(papers.size())];
  request.size = paper.size;
  request.paper_name = paper.name;
  request.noun = "card";
  request.margins = {Length::mm(8), Length::mm(8), Length::mm(8), Length::mm(8)};
  request.free_top = Length::mm(12);
  const bool small = paper.size.width < Length::mm(110);
  request.rhythm = Length::mm(small ? 3 : 4);
  request.roles = test::reading_roles();
  if (small) {
    for (TypeRole& role : request.roles) role.distance = role.distance * 2 / 3;
  }
  auto edge = std::make_shared<LabelColumn>();
  const std::string title = say(words(1, 2)), facts = say(words(2, 5));
  std::vector<BlockPtr> blocks{std::make_shared<Ends>(
      paragraph(title, {.role = Role::title, .face = Face::bold}),
      paragraph(facts, {.align = Align::end}), Length::mm(4), Beside::Line::last_baseline)};
  std::vector<AlertEntry> alerts;
  for (std::size_t i = draw(3); i > 0; --i) {
    const auto gravity = static_cast<Gravity>(draw(4));
    const std::string word = say("WARNING"), statement = say(words(2, 6)),
                      action = say(words(1, 8));
    alerts.push_back({gravity, word, statement, action});
  }
  blocks.push_back(std::make_shared<Alerts>(std::move(alerts), edge, Alerts::Actions::below,
                                            rule_name, Origin{"alerts", {}}));
  blocks.push_back(std::make_shared<Gap>(1, 0.4, 2));
  std::vector<LabelRow> rows;
  for (std::size_t i = 1 + draw(9); i > 0; --i) {
    std::string label = say(words(1, 2));
    rows.push_back({std::move(label), paragraph(say(words(1, 20)))});
  }
  blocks.push_back(
      std::make_shared<Rows>(std::move(rows), edge, Rows::Close::rule, Origin{"rows", {}}));
  blocks.push_back(std::make_shared<Gap>(1, 0.4, 2));
  if (draw(2) == 0) {
    std::vector<TableRow> lines;
    const std::string a = say("Part"), b = say("Tool");
    for (std::size_t i = 1 + draw(4); i > 0; --i) {
      std::string part = say(words(1, 2));
      lines.push_back({{{{{std::move(part)}}, draw(2) == 0}, {{{say(words(1, 5))}}}}, {}});
    }
    blocks.push_back(std::make_shared<Table>(
        std::vector<TableColumn>{{a, TableColumn::Kind::natural}, {b}}, std::move(lines)));
    blocks.push_back(std::make_shared<Gap>(1, 0.4, 2));
  }
  say("In Comb-out Bath Lantern Street 24 November");
  blocks.push_back(std::make_shared<TickRow>(std::vector<std::string>{"In", "Comb-out", "Bath"}));
  const auto root = std::make_shared<Column>(std::move(blocks));
  request.layouts = {{"only", [root] { return root; }}};
  request.footer = std::make_shared<Ends>(
      paragraph("Lantern Street", {.role = Role::foot}),
      paragraph("24 November", {.role = Role::foot, .align = Align::end}), Length::mm(4));
  return made;
}

std::string without_spaces(std::string text) {
  std::erase(text, ' ');
  return text;
}

void check_page(const Made& made, const ComposedPage& page, const FontSet& fonts) {
  const PageRequest& request = made.request;
  const Rect area = inset({{}, request.size}, {request.free_top, request.margins.right,
                                               request.margins.bottom, request.margins.left});
  CHECK(without_spaces(test::text_of(page.frame)) == without_spaces(made.text));
  CHECK(test::tags_balanced(page.frame));
  CHECK(page.frame.size == request.size);
  const auto texts = test::marks_of<TextMark>(page.frame);
  std::vector<Rect> inks;
  for (const TextMark* text : texts) {
    inks.push_back(test::ink_on_page(*text));
    // Letters such as j may reach over the edge by what is white beside them.
    CHECK(contains(outset(area, {{}, Length::mm(0.4), {}, Length::mm(0.4)}), inks.back()));
    for (const ShapedRun& run : text->line->runs()) {
      for (const TypeRole& role : request.roles) {
        if (role.role != run.role) continue;
        // NUREG-0700: 16 minutes of arc at least, from the capital height of the face.
        CHECK(arc_minutes(role.distance,
                          Length::points(run.points * fonts.capital_height(run.face))) >= 15.998);
      }
    }
  }
  for (std::size_t i = 0; i < inks.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      if (overlap(inks[i], inks[j])) {
        FAIL_CHECK("'" << texts[i]->line->text() << "' is over '" << texts[j]->line->text() << "'");
      }
    }
  }
  for (const FillMark* fill : test::marks_of<FillMark>(page.frame))
    CHECK(contains(area, fill->area));
  for (const StrokeMark* stroke : test::marks_of<StrokeMark>(page.frame)) {
    CHECK((stroke->from.y >= area.top() && stroke->from.y <= area.bottom()));
    // No rule runs through letters.
    for (const Rect& ink : inks) {
      const Rect rule{{stroke->from.x, stroke->from.y - stroke->weight / 2},
                      {stroke->to.x - stroke->from.x, stroke->weight}};
      CHECK_FALSE(overlap(rule, ink));
    }
  }
}
}  // namespace

TEST_CASE("made-up pages: nothing lost, over another, too small or outside", "[page][compose]") {
  test::Desk desk;
  std::mt19937 random(42);
  int composed = 0, refused = 0, steps = 0;
  for (int round = 0; round < 250; ++round) {
    INFO("round " << round);
    const Made made = made_up_page(random);
    DiagnosticSink sink;
    const auto page = compose(made.request, desk.shaper, sink);
    desk.shaper.forget();
    if (!page) {
      ++refused;
      REQUIRE(sink.error_count() == 1);
      continue;
    }
    ++composed;
    steps += page->step;
    CHECK_FALSE(sink.has_errors());
    CHECK(page->measures <= 3);
    check_page(made, *page, *desk.fonts);
  }
  CHECK(composed > 100);
  CHECK(refused > 5);
  CHECK(steps > 100);
}

TEST_CASE("the same request gives the same page", "[page][compose]") {
  std::mt19937 a(3), b(3);
  test::Desk one, two;
  for (int round = 0; round < 5; ++round) {
    const auto first = compose(made_up_page(a).request, one.shaper, one.sink),
               second = compose(made_up_page(b).request, two.shaper, two.sink);
    REQUIRE(first.has_value() == second.has_value());
    if (first) CHECK(to_text(first->frame) == to_text(second->frame));
  }
}

TEST_CASE("what does not fit is an error that says by how much and why", "[page][compose]") {
  test::Desk desk;
  SourceSet files;
  const std::uint32_t file = files.add("pets/rex.toml", "name = \"Rex\"\nnotes = \"long\"\n");
  PageRequest request = lines_request(40, {"notes", {file, {2, 9}, {2, 15}}});
  request.span = {file, {1, 1}, {1, 5}};
  CHECK_FALSE(compose(request, desk.shaper, desk.sink));
  REQUIRE(desk.sink.all().size() == 1);
  // 40 lines and one of 12.25 pt × 1.24 and a gap of 2 mm against 128 mm.
  CHECK(to_text(desk.sink.all()[0], files) ==
        "pets/rex.toml:1:1: error: the card is 93.8 mm too tall for A6\n"
        "  name = \"Rex\"\n"
        "  ^^^^\n"
        "pets/rex.toml:2:9: note: 'notes' takes 214 mm\n"
        "  notes = \"long\"\n"
        "          ^^^^^^\n"
        "furnish: note: 'end' takes 5 mm\n"
        "  hint: shorten what takes the most room, or choose a larger paper\n");
}

TEST_CASE("a piece that may not break is too wide, not clipped", "[page][compose]") {
  test::Desk desk;
  PageRequest request = lines_request(1);
  request.layouts = {{"only", [] {
                        return paragraph("Donaudampfschifffahrtsgesellschaftskapitänsmütze",
                                         {.breaking = Breaking::never}, Origin{"name", {}});
                      }}};
  CHECK_FALSE(compose(request, desk.shaper, desk.sink));
  REQUIRE(desk.sink.all().size() == 1);
  CHECK(desk.sink.all()[0].code == "page-too-wide");
  CHECK(desk.sink.all()[0].message == "'name' is 8.7 mm too wide for A6");
}

TEST_CASE("type grows to its most before gaps do, and gaps are squeezed last", "[page][compose]") {
  test::Desk desk;
  const auto short_page = compose(lines_request(2), desk.shaper, desk.sink);
  REQUIRE(short_page);
  CHECK(short_page->step == 12);
  int before = 12;
  bool squeezed = false;
  for (int lines = 3; lines < 40; ++lines) {
    DiagnosticSink sink;
    const auto page = compose(lines_request(lines), desk.shaper, sink);
    if (!page) break;
    CHECK(page->step <= before);
    if (page->squeezed) CHECK(page->step == 0);
    squeezed = squeezed || page->squeezed;
    before = page->step;
    // The last line stands on the bottom margin: the gap took what was left.
    const auto marks = test::marks_of<TextMark>(page->frame);
    CHECK(Length::mm(138) - marks.back()->baseline.y < Length::mm(3));
  }
  CHECK(before == 0);
  CHECK(squeezed);
}

TEST_CASE("the first layout that fits is taken, and the step is the largest", "[page][compose]") {
  test::Desk desk;
  for (int lines = 4; lines < 30; lines += 3) {
    PageRequest request = lines_request(lines);
    const auto page = compose(request, desk.shaper, desk.sink);
    if (!page || page->step == request.steps || page->squeezed) continue;
    // One step more, set exactly, would not fit.
    const BlockPtr root = request.layouts[0].make();
    Setting next{
        TypeScale(request.roles, desk.fonts->capital_height(), page->step + 1, request.steps),
        request.rhythm, desk.shaper};
    CHECK(root->measure(Length::mm(85), next).wanted > Length::mm(128));
  }
  PageRequest two = lines_request(40);
  two.layouts.push_back({"tight", lines_request(4).layouts[0].make});
  two.layouts.push_back({"never tried", lines_request(3).layouts[0].make});
  const auto page = compose(two, desk.shaper, desk.sink);
  REQUIRE(page);
  CHECK(page->layout == "tight");
}

TEST_CASE("decoration comes first and stands outside all structure", "[page][compose]") {
  std::mt19937 random(5);
  test::Desk desk;
  const auto page = compose(made_up_page(random).request, desk.shaper, desk.sink);
  REQUIRE(page);
  bool in_structure = false;
  for (const Mark& mark : page->frame.marks) {
    if (std::holds_alternative<OpenTag>(mark)) in_structure = true;
    if (std::holds_alternative<FillMark>(mark) || std::holds_alternative<StrokeMark>(mark)) {
      CHECK_FALSE(in_structure);
    }
  }
}

TEST_CASE("pages of two languages are set side by side, each as its shaper's", "[page][compose]") {
  test::Desk desk;
  TextShaper arabic(*desk.fonts, desk.sink, "ar");
  const PageRequest request = lines_request(4);
  const auto left_edge = [](const ComposedPage& page) {
    return test::marks_of<TextMark>(page.frame).front()->baseline.x;
  };
  const auto before = compose(request, desk.shaper, desk.sink);
  const auto turned = compose(request, arabic, desk.sink);
  const auto after = compose(request, desk.shaper, desk.sink);
  REQUIRE(before);
  REQUIRE(turned);
  REQUIRE(after);
  CHECK(left_edge(*before) == Length::mm(10));
  CHECK(left_edge(*turned) > Length::mm(90));
  CHECK(to_text(after->frame) == to_text(before->frame));
}
