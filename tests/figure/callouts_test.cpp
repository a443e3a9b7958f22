#include "figure/callouts.h"

#include <catch2/catch.hpp>

#include "figure/drawing.h"
#include "figure/generated.h"
#include "figure/setting.h"
#include "share.h"

namespace furnish {
namespace {
struct Disc {
  Vec middle;
  double radius;
};
struct Found {
  std::vector<Disc> discs;
  std::vector<StrokeMark> leaders;
  std::vector<Rect> labels;
};

Vec mm(Point p) {
  return {p.x.in_mm(), p.y.in_mm()};
}

/// Discs, leaders and numbers as they stand in the frame, without asking the code that put them
/// there: a disc is a filled circle of four curves with an outline and a number in it.
Found find(const Frame& frame) {
  Found out;
  for (std::size_t i = 0; i < frame.marks.size(); ++i) {
    if (const auto* stroke = std::get_if<StrokeMark>(&frame.marks[i])) {
      out.leaders.push_back(*stroke);
    }
    const auto* text = std::get_if<TextMark>(&frame.marks[i]);
    if (text == nullptr || i == 0) continue;
    const Rect ink = text->line->ink();
    out.labels.push_back({{text->baseline.x + ink.left(), text->baseline.y + ink.top()}, ink.size});
    const auto& path = std::get<PathMark>(frame.marks[i - 1]);
    const Contour& circle = path.contours.front();
    const Vec right = mm(circle.start), left = mm(circle.curves[1].end);
    out.discs.push_back({mix(left, right, 0.5), distance(left, right) / 2});
  }
  return out;
}
}  // namespace

TEST_CASE("plans with every region used: leaders never cross, labels keep clear",
          "[figure][callouts]") {
  const HandHeld page;
  std::mt19937 random(1000);
  const std::size_t rounds = test::share_of(1000);
  std::size_t all = 0;
  for (std::size_t round = 0; round < rounds; ++round) {
    const FigureInput input = any_plan(random);
    const double width = between(random, 80, 180);
    Frame frame;
    frame.size = {Length::mm(width), Length::mm(width * 0.95)};
    dog_figure(input, draw_dog(input), 60_mm, 250_mm, 1)
        ->place({{}, frame.size}, page.setting(), frame);
    const Found found = find(frame);
    INFO("round " << round << ", width " << width);
    all += found.discs.size();
    REQUIRE(found.discs.size() == region_count);
    REQUIRE(found.leaders.size() == region_count);
    for (std::size_t i = 0; i < found.leaders.size(); ++i) {
      const Vec a = mm(found.leaders[i].from), b = mm(found.leaders[i].to);
      for (std::size_t j = 0; j < found.leaders.size(); ++j) {
        if (i == j) continue;
        if (j > i) {
          REQUIRE_FALSE(segments_cross(a, b, mm(found.leaders[j].from), mm(found.leaders[j].to)));
          REQUIRE(distance(found.discs[i].middle, found.discs[j].middle) >
                  found.discs[i].radius + found.discs[j].radius);
          REQUIRE_FALSE(overlap(found.labels[i], found.labels[j]));
        }
        REQUIRE(distance_to_segment(found.discs[j].middle, a, b) > found.discs[j].radius);
      }
      const Disc& disc = found.discs[i];
      const Rect square{
          {Length::mm(disc.middle.x - disc.radius), Length::mm(disc.middle.y - disc.radius)},
          {Length::mm(2 * disc.radius), Length::mm(2 * disc.radius)}};
      REQUIRE(contains({{}, frame.size}, square));
    }
    // The figure: no curve of the dog comes into a disc. Its marks come before the first leader.
    for (const Mark& mark : frame.marks) {
      if (std::holds_alternative<StrokeMark>(mark)) break;
      const auto* path = std::get_if<PathMark>(&mark);
      if (path == nullptr) continue;
      for (const Contour& contour : path->contours) {
        for (const Contour::Curve& curve : contour.curves) {
          for (const Disc& disc : found.discs) {
            REQUIRE(distance(mm(curve.end), disc.middle) > disc.radius + 0.3);
          }
        }
      }
    }
  }
  CHECK(all == rounds * region_count);
}

TEST_CASE("a disc stands nearer to what it points at than any free place allows by chance",
          "[figure][callouts]") {
  // Two anchors on a square: each gets the side it is near to.
  CalloutRoom room;
  room.figure = {{{0, 0}, {0, 40}, {40, 40}, {40, 0}}};
  room.low = {-10, -10};
  room.high = {50, 50};
  const auto placed = place_callouts(room, {{{3, 20}}, {{37, 20}}});
  REQUIRE(placed.size() == 2);
  CHECK(placed[0].disc.x < 0);
  CHECK(placed[1].disc.x > 40);
}

TEST_CASE("callouts without room are said to be without a place", "[figure][callouts]") {
  CalloutRoom room;
  room.figure = {{{0, 0}, {0, 40}, {40, 40}, {40, 0}}};
  room.low = {0, 0};
  room.high = {40, 40};
  const auto placed = place_callouts(room, {{{3, 20}}});
  REQUIRE(placed.size() == 1);
  CHECK_FALSE(placed[0].placed);
}

TEST_CASE("what crossing means", "[figure][callouts]") {
  CHECK(segments_cross({0, 0}, {2, 2}, {0, 2}, {2, 0}));
  CHECK(segments_cross({0, 0}, {2, 0}, {1, 0}, {3, 0}));
  CHECK(segments_cross({0, 0}, {2, 0}, {1, 0}, {1, 5}));
  CHECK_FALSE(segments_cross({0, 0}, {2, 0}, {0, 1}, {2, 1}));
  CHECK_FALSE(segments_cross({0, 0}, {1, 1}, {2, 2}, {3, 3}));
}
}  // namespace furnish
