#include "figure/shading.h"

#include <catch2/catch.hpp>

#include "figure/figure.h"
#include "figure/setting.h"

namespace furnish {
namespace {
Frame patch_of(Shade what) {
  Frame frame;
  frame.size = {30_mm, 30_mm};
  shade({rectangle_contour({{}, frame.size})}, what, frame);
  return frame;
}

double mean_grey(const Frame& frame) {
  const Raster raster = rasterised(frame, 300);
  double sum = 0;
  for (const unsigned char grey : raster.grey) sum += grey;
  return sum / static_cast<double>(raster.grey.size());
}

int hatchings(const Frame& frame) {
  int count = 0;
  for (const Mark& mark : frame.marks) count += std::holds_alternative<HatchMark>(mark) ? 1 : 0;
  return count;
}
}  // namespace

TEST_CASE("printed in grey every shade is lighter than the one before", "[figure][shading]") {
  double before = 0;
  for (std::size_t i = 0; i < shade_count; ++i) {
    const double grey = mean_grey(patch_of(static_cast<Shade>(i)));
    INFO("shade " << i << ", grey " << grey);
    CHECK(grey > before + 15);
    CHECK(grey < 250);
    before = grey;
  }
}

TEST_CASE("regions of one shade are one field, and what they are worked on with is left out",
          "[figure][shading]") {
  const HandHeld page;
  FigureInput input;
  const auto shaded = [&](std::initializer_list<Region> regions, Shade what) {
    for (const Region region : regions) input.shades[static_cast<std::size_t>(region)] = what;
  };
  shaded({Region::neck, Region::shoulders, Region::back}, Shade::middle);
  shaded({Region::breeches}, Shade::dark);
  shaded({Region::ears}, Shade::light);
  input.tools[static_cast<std::size_t>(Region::back)] = ToolKind::blade;
  Frame frame;
  frame.size = {110_mm, 90_mm};
  dog_figure(input, draw_dog(input), 60_mm, 250_mm, 1)
      ->place({{}, frame.size}, page.setting(), frame);
  CHECK(hatchings(frame) == 3);
  for (const Mark& mark : frame.marks) {
    const auto* hatch = std::get_if<HatchMark>(&mark);
    // Three regions side by side are one outline.
    if (hatch != nullptr) CHECK(hatch->area.size() == 1);
  }
}

TEST_CASE("a key has a patch and words for each shade", "[figure][shading]") {
  const HandHeld page;
  const BlockPtr key = figure_key({{shade_patch(Shade::dark, key_sign), {{"every day"}}},
                                   {shade_patch(Shade::light, key_sign), {{"once a week"}}}});
  Frame frame;
  frame.size = {80_mm, key->measure(80_mm, page.setting()).wanted};
  key->place({{}, frame.size}, page.setting(), frame);
  CHECK(hatchings(frame) == 2);
  const std::string dump = to_text(frame);
  CHECK(dump.find("every day") < dump.find("once a week"));
}
}  // namespace furnish
