#include <catch2/catch.hpp>
#include <initializer_list>

#include "figure/drawn_dog.h"
#include "figure/on_paper.h"
#include "figure/setting.h"
#include "figure/ten_dogs.h"

namespace furnish {
namespace {
constexpr Size sheet{150_mm, 130_mm};
constexpr double dpi = 150;

/// The outline filled with black, all dogs alike.
Frame outline_alone(const FigureInput& input) {
  const DrawnDogPtr dog = draw_dog(input);
  Frame frame;
  frame.size = sheet;
  const OnPaper paper =
      standing_in({{}, sheet}, sheet.height, 0.95, dog->bounds.low, dog->bounds.high, Side::left);
  frame.marks.emplace_back(
      PathMark{paper.contours(dog->drawing.silhouette), Ink::text, std::nullopt, {}, Dash::solid});
  return frame;
}

Frame in_full(const FigureInput& input, const HandHeld& page) {
  Frame frame;
  frame.size = sheet;
  dog_figure(input, draw_dog(input), 60_mm, 250_mm, 1)
      ->place({{}, frame.size}, page.setting(), frame);
  return frame;
}
}  // namespace

// Not run unless asked for: figure_tests "[.pictures]" writes them into the folder for temporary
// files, to be looked at.
TEST_CASE("pictures of ten dogs", "[.pictures]") {
  const HandHeld page;
  for (const KnownDog& dog : ten_dogs()) {
    const std::string key(dog.key);
    WARN(written(rasterised(outline_alone(dog.input), dpi), "outline-" + key + ".pgm"));
    WARN(written(rasterised(in_full(dog.input, page), dpi), "figure-" + key + ".pgm"));
  }
}

TEST_CASE("pictures of small dogs and of shaded ones", "[.pictures]") {
  const HandHeld page;
  for (KnownDog& dog : ten_dogs()) {
    const std::string key(dog.key);
    dog.input.spots = {{{Region::ears, Side::left}, SpotKind::avoid, 0},
                       {{Region::hocks, Side::left}, SpotKind::avoid, 0},
                       {{Region::loin, Side::both}, SpotKind::sore, 0}};
    const BlockPtr small = small_dog_figure(dog.input, draw_dog(dog.input, Detail::small), 30_mm);
    Frame frame;
    frame.size = {34_mm, small->measure(34_mm, page.setting()).wanted + 4_mm};
    small->place({{2_mm, 2_mm}, {30_mm, frame.size.height - 4_mm}}, page.setting(), frame);
    WARN(written(rasterised(frame, 300), "small-" + key + ".pgm"));

    dog.input.spots.clear();
    const auto shaded = [&](std::initializer_list<Region> regions, Shade what) {
      for (const Region region : regions) {
        dog.input.shades[static_cast<std::size_t>(region)] = what;
      }
    };
    shaded({Region::ears, Region::breeches, Region::fringe, Region::tail}, Shade::dark);
    shaded({Region::neck, Region::shoulders, Region::back, Region::sides, Region::loin,
            Region::rump, Region::ruff},
           Shade::light);
    shaded({Region::belly, Region::chest, Region::tuck_up}, Shade::middle);
    shaded({Region::muzzle}, Shade::crossed);
    WARN(written(rasterised(in_full(dog.input, page), dpi), "shaded-" + key + ".pgm"));
  }
}
}  // namespace furnish
