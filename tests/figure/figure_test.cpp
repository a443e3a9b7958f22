#include "figure/figure.h"

#include <catch2/catch.hpp>

#include "figure/generated.h"
#include "figure/lengths.h"
#include "figure/setting.h"
#include "page/frame.h"

namespace furnish {
namespace {
Frame drawn(const FigureInput& input, Length width, const HandHeld& page) {
  Frame frame;
  frame.size = {width, scaled(width, 0.9)};
  dog_figure(input, draw_dog(input), 60_mm, 250_mm, 1)
      ->place({{}, frame.size}, page.setting(), frame);
  return frame;
}
}  // namespace

TEST_CASE("the same plan gives the same marks", "[figure]") {
  const HandHeld page, again;
  std::mt19937 one(3), other(3);
  for (int round = 0; round < 10; ++round) {
    CHECK(to_text(drawn(any_plan(one), 120_mm, page)) ==
          to_text(drawn(any_plan(other), 120_mm, again)));
  }
}

TEST_CASE("the figure is one tagged figure, and its discs lead to their rows", "[figure]") {
  const HandHeld page;
  std::mt19937 random(4);
  FigureInput input = any_plan(random);
  input.alt = "Rex, seen from the left.";
  input.callouts[3].row = "row-4";
  input.spots = {{{Region::hocks, Side::left}, SpotKind::avoid, 0}};
  const Frame frame = drawn(input, 120_mm, page);
  const auto& tag = std::get<OpenTag>(frame.marks.front());
  CHECK(tag.role == Structure::figure);
  CHECK(tag.alt == "Rex, seen from the left.");
  std::vector<std::string> links;
  for (const Mark& mark : frame.marks) {
    if (const auto* link = std::get_if<LinkMark>(&mark)) links.push_back(link->id);
  }
  CHECK(links == std::vector<std::string>{"row-4"});
}

TEST_CASE("what is on one side is marked on that side alone", "[figure]") {
  const HandHeld page;
  FigureInput input;
  input.spots = {{{Region::hocks, Side::left}, SpotKind::avoid, 0}};
  // Nothing is hatched but what must be avoided.
  const auto crosshatched = [&](Side side) {
    input.side = side;
    int count = 0;
    for (const Mark& mark : drawn(input, 120_mm, page).marks) {
      if (std::holds_alternative<HatchMark>(mark)) ++count;
    }
    return count;
  };
  CHECK(crosshatched(Side::left) == 2);
  CHECK(crosshatched(Side::right) == 0);
  input.spots[0].place.side = Side::both;
  CHECK(crosshatched(Side::right) == 2);
}

TEST_CASE("what ear or tail hangs over is pointed at with a ring", "[figure]") {
  const HandHeld page;
  FigureInput input;
  input.coat = Coat::curly;
  input.weight = Mass::kg(24.1);
  input.build = {NoseLength::long_nose, Legs::long_legs, {}, EarType::drop, TailType::docked};
  input.left[static_cast<std::size_t>(Region::ears)] = LengthRange{60_mm, 60_mm};
  const FigureCallout throat{1, {Region::throat}, false, {}}, ear{2, {Region::ears}, false, {}},
      either{3, {Region::throat, Region::chest}, false, {}};
  // Small white circles; a disc is larger.
  const auto rings = [&](std::vector<FigureCallout> callouts) {
    input.callouts = std::move(callouts);
    int count = 0;
    for (const Mark& mark : drawn(input, 120_mm, page).marks) {
      const auto* path = std::get_if<PathMark>(&mark);
      if (path == nullptr || path->contours.size() != 1 || path->fill != Ink::paper) continue;
      double low = 1e9, high = -1e9;
      for (const Contour::Curve& curve : path->contours.front().curves) {
        low = std::min(low, curve.end.x.in_mm());
        high = std::max(high, curve.end.x.in_mm());
      }
      count += high - low < 2 ? 1 : 0;
    }
    return count;
  };
  CHECK(points_at_covered(throat, draw_dog(input)));
  CHECK_FALSE(points_at_covered(ear, draw_dog(input)));
  // One of its regions is in sight, and that is pointed at.
  CHECK_FALSE(points_at_covered(either, draw_dog(input)));
  const int of_the_dog = rings({});
  CHECK(rings({ear, either}) == of_the_dog);
  CHECK(rings({throat, ear, either}) == of_the_dog + 1);
  input.build.ears = EarType::prick;
  CHECK_FALSE(points_at_covered(throat, draw_dog(input)));
}

TEST_CASE("the right side is the left one in the mirror", "[figure]") {
  const HandHeld page;
  FigureInput input;
  input.coat = Coat::smooth;
  const Frame left = drawn(input, 100_mm, page);
  input.side = Side::right;
  const Frame right = drawn(input, 100_mm, page);
  REQUIRE(left.marks.size() == right.marks.size());
  for (std::size_t i = 0; i < left.marks.size(); ++i) {
    const auto* a = std::get_if<PathMark>(&left.marks[i]);
    if (a == nullptr) continue;
    const auto& b = std::get<PathMark>(right.marks[i]);
    for (std::size_t k = 0; k < a->contours.size(); ++k) {
      const Point p = a->contours[k].start, q = b.contours[k].start;
      CHECK((p.x + q.x).in_mm() == Approx(100).margin(0.003));
      CHECK(p.y == q.y);
    }
  }
}

TEST_CASE("everything stays inside the box that the figure was given", "[figure]") {
  const HandHeld page;
  std::mt19937 random(12);
  for (int round = 0; round < 30; ++round) {
    const FigureInput input = any_plan(random);
    const Length width = Length::mm(between(random, 80, 180));
    const Frame frame = drawn(input, width, page);
    const auto inside = [&](Point p) { return contains({{}, frame.size}, Rect{p, {}}); };
    for (const Mark& mark : frame.marks) {
      if (const auto* path = std::get_if<PathMark>(&mark)) {
        for (const Contour& contour : path->contours) {
          REQUIRE(inside(contour.start));
          for (const Contour::Curve& curve : contour.curves) REQUIRE(inside(curve.end));
        }
      }
    }
  }
}

TEST_CASE("where the plan is silent, growing coats follow their neighbour", "[figure]") {
  FigureInput input;
  input.coat = Coat::curly;
  const auto set = [&](Region region, Length length) {
    input.left[static_cast<std::size_t>(region)] = LengthRange{length, length};
  };
  set(Region::front_legs, 30_mm);
  set(Region::back, 13_mm);
  const auto length = [&](Region region) {
    return drawn_lengths(input)[static_cast<std::size_t>(region)];
  };
  CHECK(length(Region::fringe) == 30_mm);
  CHECK(length(Region::ruff) == 13_mm);
  CHECK(length(Region::tail) == natural_length(Coat::curly, Region::tail));
  input.coat = Coat::double_coat;
  CHECK(length(Region::ruff) == natural_length(Coat::double_coat, Region::ruff));
  input.left[static_cast<std::size_t>(Region::ruff)] = LengthRange{20_mm, 30_mm};
  CHECK(length(Region::ruff) == 25_mm);
}
}  // namespace furnish
