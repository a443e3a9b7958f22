#include "figure/true_size.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "figure/setting.h"

namespace furnish {
namespace {
Frame page_of(const BlockPtr& block, Length width, const HandHeld& page) {
  Frame frame;
  const Extent extent = block->measure(width, page.setting());
  frame.size = {width, extent.wanted};
  block->place({{}, frame.size}, page.setting(), frame);
  return frame;
}

/// Length of the first run of dark pixels from the left edge, in mm, in the row at `y` mm.
double dark_from_edge(const Raster& raster, double y, double dpi) {
  const int row = static_cast<int>(y / 25.4 * dpi);
  int x = 0;
  while (x < raster.width && raster.at(x, row) < 128) ++x;
  return x / dpi * 25.4;
}
}  // namespace

TEST_CASE("bars and rule are as long as they say, measured at 600 dpi", "[figure][true-size]") {
  const HandHeld page;
  constexpr double dpi = 600;
  // Lengths with the awkward ends: sixteenths of an inch, tenths, under the line's own width.
  const std::vector<LengthRange> lengths{{13_mm, 13_mm},
                                         {Length::inches(1, 16), Length::inches(1, 16)},
                                         {Length::inches(1, 2), Length::inches(1)},
                                         {0.2_mm, 0.2_mm},
                                         {18_mm, 20_mm},
                                         {33.3_mm, 61.7_mm}};
  for (const LengthRange& range : lengths) {
    const Frame frame = page_of(true_size_bars({{range, "x"}}, "r"), 90_mm, page);
    const Raster raster = rasterised(frame, dpi);
    // Inside the bar, solid up to the low end: the shortest dark run, as hatching lines begin
    // there.
    double solid = 1e9;
    for (double y = 0.4; y < 2.8; y += 0.1) solid = std::min(solid, dark_from_edge(raster, y, dpi));
    CHECK(solid == Approx(range.low.in_mm()).margin(0.1));
    // Along its upper edge, where solid and hatched part both have a line: up to the high end.
    CHECK(dark_from_edge(raster, 0.07, dpi) == Approx(range.high.in_mm()).margin(0.1));
  }
}

TEST_CASE("the rule is 50 mm at 600 dpi", "[figure][true-size]") {
  const HandHeld page;
  constexpr double dpi = 600;
  const Frame frame = page_of(true_size_bars({}, "r"), 90_mm, page);
  const Raster raster = rasterised(frame, dpi);
  CHECK(dark_from_edge(raster, 3.05, dpi) == Approx(50).margin(0.1));
}

TEST_CASE("in the frame the marks are exact to the micrometre", "[figure][true-size]") {
  const HandHeld page;
  const Frame frame = page_of(true_size_bars({{{13_mm, 25_mm}, "hocks"}}, "r"), 90_mm, page);
  const auto& solid = std::get<FillMark>(frame.marks.front());
  CHECK(solid.area.size.width == 13_mm);
  Length end{};
  for (const Mark& mark : frame.marks) {
    const auto* fill = std::get_if<FillMark>(&mark);
    if (fill != nullptr && fill->area.top() < 3_mm && fill->area.right() < 30_mm) {
      end = std::max(end, fill->area.right());
    }
  }
  CHECK(end == 25_mm);
}

TEST_CASE("words stand beside a bar or, without room, under it, never over it",
          "[figure][true-size]") {
  const HandHeld page;
  const std::string label = "60–70 mm breeches, chest";
  for (const Length width : {60_mm, 75_mm, 140_mm}) {
    const Frame frame = page_of(true_size_bars({{{60_mm, 70_mm}, label}}, "at 100 %"), width, page);
    for (const Mark& mark : frame.marks) {
      const auto* text = std::get_if<TextMark>(&mark);
      if (text == nullptr) continue;
      const Rect ink = text->line->ink();
      const Rect there{{text->baseline.x + ink.left(), text->baseline.y + ink.top()}, ink.size};
      CHECK(contains({{}, frame.size}, there));
      for (const Mark& other : frame.marks) {
        if (const auto* fill = std::get_if<FillMark>(&other)) {
          CHECK_FALSE(overlap(there, fill->area));
        }
      }
    }
  }
}
}  // namespace furnish
