#include "figure/ten_dogs.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <limits>

#include "figure/bone.h"
#include "figure/drawn_dog.h"

namespace furnish {
namespace {
Shape outline_of(const FigureInput& input) {
  return draw_dog(input)->drawing.silhouette;
}
FigureInput input_of(std::string_view key) {
  const auto dogs = ten_dogs();
  return std::ranges::find(dogs, key, &KnownDog::key)->input;
}

/// Moved and scaled to stand on the ground between 0 and 100 across.
Shape framed(Shape shape) {
  const Bounds box = bounds_of(shape);
  const double scale = 100 / box.size().x;
  for (Ring& ring : shape) {
    for (Vec& p : ring) p = (p - Vec{box.low.x, 0}) * scale;
  }
  return shape;
}

/// Share of the two that only one of them covers.
double unlike(const Shape& a, const Shape& b) {
  return 1 - area(intersect(a, b)) / area(unite(a, b));
}

std::size_t outlines(const Shape& shape) {
  return static_cast<std::size_t>(
      std::ranges::count_if(shape, [](const Ring& ring) { return area(ring) < 0; }));
}

double lowest_before(const Shape& shape, double x) {
  double y = std::numeric_limits<double>::max();
  for (const Ring& ring : shape) {
    for (const Vec& p : ring) {
      if (p.x < x) y = std::min(y, p.y);
    }
  }
  return y;
}

double top_of(const Shape& shape) {
  return bounds_of(shape).high.y;
}
}  // namespace

TEST_CASE("each of ten dogs has one outline, unlike those of all others", "[figure][dogs]") {
  const auto dogs = ten_dogs();
  std::vector<Shape> framed_dogs;
  for (const KnownDog& dog : dogs) {
    const DrawnDogPtr drawn = draw_dog(dog.input);
    INFO(dog.key);
    CHECK(outlines(drawn->drawing.silhouette) == 1);
    CHECK(outlines(drawn->drawing.near) == 1);
    framed_dogs.push_back(framed(drawn->drawing.silhouette));
  }
  double nearest = 1;
  std::string pair;
  for (std::size_t i = 0; i < dogs.size(); ++i) {
    for (std::size_t j = i + 1; j < dogs.size(); ++j) {
      const double apart = unlike(framed_dogs[i], framed_dogs[j]);
      if (apart < nearest) {
        nearest = apart;
        pair = std::string(dogs[i].key) + " and " + std::string(dogs[j].key);
      }
    }
  }
  WARN("most alike: " << pair << ", of whose area " << nearest << " is not shared");
  CHECK(nearest > 0.1);
}

TEST_CASE("a beard hangs from the chin and not from the bridge of the nose", "[figure][dogs]") {
  FigureInput bearded = input_of("wire-terrier"), shaved = bearded;
  shaved.left[static_cast<std::size_t>(Region::muzzle)] = LengthRange{2_mm, 2_mm};
  const Shape with = outline_of(bearded), without = outline_of(shaved);
  const double before_chest = -45;
  CHECK(lowest_before(with, before_chest) < lowest_before(without, before_chest) - 6);
  const Shape grown_by = without_specks(subtract(with, without), 1);
  // The bridge lies before the tips of the brows, which go with the beard.
  const Vec bridge{-63, 119};
  for (const Ring& ring : grown_by) {
    for (const Vec& p : ring) CHECK((p.x > bridge.x || p.y < bridge.y));
  }
}

TEST_CASE("hair that would hang into the eyes is tied up, shorter hair falls as a fringe",
          "[figure][dogs]") {
  FigureInput tied = input_of("long-toy"), fringe = tied;
  fringe.left[static_cast<std::size_t>(Region::crown)] = LengthRange{40_mm, 40_mm};
  CHECK(top_of(outline_of(tied)) > top_of(outline_of(fringe)) + 5);
}

TEST_CASE("a tail ends as its finish says", "[figure][dogs]") {
  const auto tail = [&](std::string_view dog, TailEnd end) {
    FigureInput input = input_of(dog);
    input.tail_end = end;
    return draw_dog(input, Detail::small)->drawing.tail_shape;
  };
  const Shape ball = tail("lamb", TailEnd::ball), carrot = tail("wire-terrier", TailEnd::carrot);
  // The topmost fifth: of a ball it is wide, of a carrot a point.
  const auto wide_at_top = [](const Shape& shape) {
    const Bounds box = bounds_of(shape);
    const double from = box.high.y - 0.2 * box.size().y;
    return bounds_of(intersect(shape, {{{-500, from}, {-500, 500}, {500, 500}, {500, from}}}))
        .size()
        .x;
  };
  CHECK(wide_at_top(ball) > 14);
  CHECK(wide_at_top(carrot) < 0.5 * wide_at_top(ball));
  CHECK(unlike(tail("lamb", TailEnd::natural), ball) > 0.2);
  CHECK(unlike(tail("wire-terrier", TailEnd::natural), carrot) > 0.2);
}

TEST_CASE("bone is worked out where the file is silent", "[figure][dogs]") {
  Build build;
  CHECK(bone_of(build, std::nullopt) == Bone::medium);
  CHECK(bone_of(build, Mass::kg(44.9)) == Bone::medium);
  CHECK(bone_of(build, Mass::kg(45)) == Bone::heavy);
  build.nose = NoseLength::long_nose;
  build.legs = Legs::long_legs;
  CHECK(bone_of(build, Mass::kg(23)) == Bone::fine);
  build.bone = Bone::heavy;
  CHECK(bone_of(build, Mass::kg(23)) == Bone::heavy);
}

TEST_CASE("fine dogs have a belly tucked up, heavy ones thick legs", "[figure][dogs]") {
  FigureInput input;
  input.coat = Coat::smooth;
  const auto drawn = [&](Bone bone) {
    input.build.bone = bone;
    return draw_dog(input, Detail::small);
  };
  const auto belly_at = [](const DrawnDogPtr& dog, double x) {
    double y = 30;
    while (y < 90 && !holds(dog->drawing.near, {x, y})) y += 0.2;
    return y;
  };
  const auto leg_at = [](const DrawnDogPtr& dog, double y) {
    double wide = 0;
    for (double x = -30; x < 20; x += 0.2) wide += holds(dog->drawing.near, {x, y}) ? 0.2 : 0;
    return wide;
  };
  const DrawnDogPtr fine = drawn(Bone::fine), medium = drawn(Bone::medium),
                    heavy = drawn(Bone::heavy);
  CHECK(belly_at(fine, 54) > belly_at(medium, 54) + 6);
  CHECK(leg_at(fine, 30) < 0.85 * leg_at(medium, 30));
  CHECK(leg_at(heavy, 30) > 1.2 * leg_at(medium, 30));
}
}  // namespace furnish
