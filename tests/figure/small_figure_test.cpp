#include <catch2/catch.hpp>

#include "figure/figure.h"
#include "figure/generated.h"
#include "figure/setting.h"

namespace furnish {
namespace {
Frame small(const FigureInput& input, Length width, const HandHeld& page) {
  const BlockPtr block = small_dog_figure(input, draw_dog(input, Detail::small), width);
  Frame frame;
  frame.size = {width, block->measure(width, page.setting()).wanted};
  block->place({{}, frame.size}, page.setting(), frame);
  return frame;
}

/// Middles of the struck circles: the round filled paths with an outline.
std::vector<Rect> signs_of(const Frame& frame) {
  std::vector<Rect> out;
  for (const Mark& mark : frame.marks) {
    const auto* path = std::get_if<PathMark>(&mark);
    if (path == nullptr || path->fill != Ink::paper || path->contours.size() != 1) continue;
    const Contour& contour = path->contours.front();
    if (contour.curves.size() != 4) continue;
    const Length diameter = contour.start.x - contour.curves[1].end.x;
    out.push_back(
        {{contour.curves[1].end.x, contour.start.y - diameter / 2}, {diameter, diameter}});
  }
  return out;
}
}  // namespace

TEST_CASE("a small figure has a sign of at least 3.4 mm for each place of its side, in its box",
          "[figure][small]") {
  const HandHeld page;
  std::mt19937 random(9);
  for (int round = 0; round < 24; ++round) {
    FigureInput input = any_plan(random);
    input.side = Side::left;
    input.spots = {{{Region::hocks, Side::left}, SpotKind::avoid, 0},
                   {{Region::ears, Side::both}, SpotKind::avoid, 0},
                   {{Region::front_legs, Side::right}, SpotKind::avoid, 0},
                   {{Region::loin, Side::both}, SpotKind::avoid, 0}};
    const Frame frame = small(input, 30_mm, page);
    const std::vector<Rect> signs = signs_of(frame);
    INFO("round " << round);
    REQUIRE(signs.size() == 3);
    for (const Rect& sign : signs) {
      CHECK(sign.size.width.in_mm() == Approx(3.6).margin(0.01));
      CHECK(contains({{}, frame.size}, sign));
    }
    CHECK(frame.size.height < 45_mm);
  }
}

TEST_CASE("a small figure has no strokes of hair", "[figure][small]") {
  const HandHeld page;
  std::mt19937 random(10);
  for (int round = 0; round < 12; ++round) {
    const Frame frame = small(any_plan(random), 30_mm, page);
    std::size_t outlines = 0;
    for (const Mark& mark : frame.marks) {
      outlines += std::holds_alternative<PathMark>(mark) ? 1U : 0U;
    }
    CHECK(outlines <= 6);  // far side, near side, tail, ear, eye, nose
  }
}
}  // namespace furnish
