#include "page/impose.h"

#include <catch2/catch.hpp>

#include "support.h"

using namespace furnish;

namespace {
Size size_of(std::string_view paper) {
  return parse_paper(paper)->size;
}

Frame small_frame(Size size) {
  Frame frame;
  frame.size = size;
  const TagScope document(frame, Structure::document);
  frame.marks.emplace_back(OpenTag{Structure::heading, "", "top"});
  frame.marks.emplace_back(
      FillMark{{{Length::mm(1), Length::mm(2)}, {Length::mm(3), Length::mm(4)}}});
  frame.marks.emplace_back(
      ImageMark{{{Length::mm(9), Length::mm(8)}, {Length::mm(4), Length::mm(3)}}, nullptr, {}});
  frame.marks.emplace_back(CloseTag{});
  frame.marks.emplace_back(LinkMark{{{}, {Length::mm(1), Length::mm(1)}}, "top", "up"});
  return frame;
}
}  // namespace

TEST_CASE("how many cards a sheet holds", "[page][impose]") {
  // ISO 216: a sheet holds two of the next size and four of the one after. Inches by division.
  CHECK(grid_for(size_of("A6"), size_of("A4")).count() == 4);
  const Grid a5 = grid_for(size_of("A5"), size_of("A4"));
  CHECK(a5.count() == 2);
  CHECK(a5.sheet == Size{Length::mm(297), Length::mm(210)});
  CHECK(grid_for(size_of("half letter"), size_of("letter")).count() == 2);
  CHECK(grid_for(size_of("4x6 in"), size_of("letter")).count() == 2);
  CHECK(grid_for(size_of("A4"), size_of("A5")).count() == 0);
}

TEST_CASE("cards on a sheet do not overlap and keep their tags and links", "[page][impose]") {
  std::vector<Frame> cards(5, small_frame(size_of("A6")));
  for (std::size_t i = 0; i < cards.size(); ++i) {
    for (std::size_t n = 0; n < i; ++n) cards[i].marks.emplace_back(StrokeMark{});  // each its own
  }
  const std::vector<Frame> sheets = impose(cards, size_of("A4"));
  REQUIRE(sheets.size() == 2);
  for (const Frame& sheet : sheets) CHECK(test::tags_balanced(sheet));
  const auto fills = test::marks_of<FillMark>(sheets[0]);
  REQUIRE(fills.size() == 4);
  // 210 × 296 of 210 × 297 mm: half a millimetre above and below.
  CHECK(fills[0]->area.origin == Point{Length::mm(1), Length::mm(2.5)});
  CHECK(fills[3]->area.origin == Point{Length::mm(106), Length::mm(150.5)});
  CHECK(test::marks_of<FillMark>(sheets[1]).size() == 1);
  CHECK(test::marks_of<ImageMark>(sheets[0]).at(3)->area.origin ==
        Point{Length::mm(114), Length::mm(156.5)});
  std::set<std::string> places, links;
  for (const OpenTag* tag : test::marks_of<OpenTag>(sheets[0])) {
    if (!tag->id.empty()) places.insert(tag->id);
  }
  for (const LinkMark* link : test::marks_of<LinkMark>(sheets[0])) links.insert(link->id);
  CHECK(places.size() == 4);
  CHECK(links == places);
}

TEST_CASE("copies of a card are shown as often as they are, and read once", "[page][impose]") {
  const std::vector<Frame> cards(4, small_frame(size_of("A6")));
  const std::vector<Frame> sheets = impose(cards, size_of("A4"));
  REQUIRE(sheets.size() == 1);
  CHECK(test::tags_balanced(sheets[0]));
  CHECK(test::marks_of<FillMark>(sheets[0]).size() == 4);
  CHECK(test::marks_of<LinkMark>(sheets[0]).size() == 1);
  std::size_t headings = 0;
  for (const OpenTag* tag : test::marks_of<OpenTag>(sheets[0])) {
    headings += tag->role == Structure::heading ? 1 : 0;
  }
  CHECK(headings == 1);
  // What is not read stands outside the document, where all is decoration.
  bool inside = false;
  std::size_t outside = 0;
  for (const Mark& mark : sheets[0].marks) {
    inside = inside || std::holds_alternative<OpenTag>(mark);
    outside += !inside && std::holds_alternative<FillMark>(mark) ? 1 : 0;
  }
  CHECK(outside == 3);
}

TEST_CASE("cut marks lie on the cuts and on the sheet", "[page][impose]") {
  for (const auto& [card, sheet] : {std::pair{"A6", "A4"}, {"A5", "A4"}, {"4x6 in", "letter"}}) {
    INFO(card);
    const std::vector<Frame> cards(1, small_frame(size_of(card)));
    const Grid grid = grid_for(size_of(card), size_of(sheet));
    const std::vector<Frame> sheets = impose(cards, size_of(sheet));
    const auto strokes = test::marks_of<StrokeMark>(sheets[0]);
    CHECK(strokes.size() > 0);
    const Length left = (grid.sheet.width - size_of(card).width * grid.columns) / 2,
                 top = (grid.sheet.height - size_of(card).height * grid.rows) / 2;
    for (const StrokeMark* stroke : strokes) {
      const bool upright = stroke->from.x == stroke->to.x;
      const std::int64_t off = upright ? (stroke->from.x - left).um() % size_of(card).width.um()
                                       : (stroke->from.y - top).um() % size_of(card).height.um();
      CHECK(off == 0);
      for (const Point p : {stroke->from, stroke->to}) {
        CHECK((p.x >= Length{} && p.x <= grid.sheet.width));
        CHECK((p.y >= Length{} && p.y <= grid.sheet.height));
      }
    }
  }
}
