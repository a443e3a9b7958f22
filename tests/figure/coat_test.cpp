#include <algorithm>
#include <catch2/catch.hpp>

#include "figure/drawing.h"
#include "figure/generated.h"
#include "figure/lengths.h"
#include "figure/polygon.h"
#include "figure/skeleton.h"

namespace furnish {
namespace {
constexpr Coat coats_with_hair[] = {Coat::double_coat, Coat::curly, Coat::drop,
                                    Coat::silky,       Coat::wire,  Coat::smooth};

/// How far the farthest part of `a` lies outside `b`, in units.
double sticks_out(const Shape& a, const Shape& b) {
  double worst = 0;
  for (const Ring& ring : subtract(a, b)) {
    for (const Vec& p : ring) {
      if (!holds(b, p)) worst = std::max(worst, distance_to_edge(b, p));
    }
  }
  return worst;
}

/// In all layers.
std::size_t curves(const Drawing& drawing) {
  std::size_t sum = 0;
  const auto count = [&](const Painted& painted) {
    for (const auto& line : painted.curves) sum += line.size();
  };
  count(drawing.body);
  for (const auto* layer : {&drawing.behind, &drawing.inner, &drawing.tail, &drawing.ear}) {
    std::ranges::for_each(*layer, count);
  }
  return sum;
}

Shape moved(Shape shape, Vec by) {
  for (Ring& ring : shape) {
    for (Vec& p : ring) p = p + by;
  }
  return shape;
}
}  // namespace

TEST_CASE("more coat is never drawn inside less coat", "[figure][coat]") {
  std::mt19937 random(5);
  for (int round = 0; round < 60; ++round) {
    const Build build = any_build(random);
    DrawnCoat less;
    less.coat = coats_with_hair[static_cast<std::size_t>(round) % std::size(coats_with_hair)];
    for (double& length : less.length) length = between(random, 0.2, 20);
    less.tail_end = static_cast<TailEnd>(round % 4);
    less.brow = round % 3 == 0 ? between(random, 0, 9) : 0;
    less.tied = round % 5 == 0 ? between(random, 0, 20) : 0;
    DrawnCoat more = less;
    for (double& length : more.length) length += between(random, 0, 12);
    INFO("round " << round);
    const Drawing small = drawing_of(build, less), large = drawing_of(build, more);
    CHECK(sticks_out(small.silhouette, large.silhouette) < 0.15);
    CHECK(area(large.silhouette) > area(small.silhouette));
  }
}

TEST_CASE("a region's length changes the silhouette there and nowhere else", "[figure][coat]") {
  std::mt19937 random(6);
  const std::vector<Build> builds = some_builds();
  for (int round = 0; round < 75; ++round) {
    const auto region = static_cast<std::size_t>(round) % region_count;
    DrawnCoat one = even_coat(coats_with_hair[static_cast<std::size_t>(round) % 6], 8);
    DrawnCoat other = one;
    other.length[region] = between(random, 12, 16);
    const Build build = builds[static_cast<std::size_t>(round) % builds.size()];
    const Drawing before = drawing_of(build, one), after = drawing_of(build, other);
    const Shape changed = without_specks(subtract(after.silhouette, before.silhouette), 0.05);
    // Allowed: the region's area with its hair, there and on the far legs, and the reach of the
    // smoothing beyond it.
    const Skeleton bones = skeleton(build);
    const Shape near = unite(before.areas[region], after.areas[region]);
    const Shape own = unite(near, unite(moved(near, bones.far_front), moved(near, bones.far_rear)));
    if (own.empty()) {
      CHECK(changed.empty());
      continue;
    }
    INFO(name(static_cast<Region>(region)) << ", round " << round);
    for (const Ring& ring : changed) {
      for (const Vec& p : ring) {
        const double off = holds(own, p) ? 0 : distance_to_edge(own, p);
        CHECK(off < blend_reach + 4);  // a blended hair also leans
      }
    }
  }
}

TEST_CASE("a seam that is stepped keeps its step, a blended one has none", "[figure][coat]") {
  DrawnCoat blended = even_coat(Coat::curly, 3);
  blended.length[static_cast<std::size_t>(Region::loin)] = 15;
  DrawnCoat stepped = blended;
  stepped.stepped = {{Region::back, Region::loin}, {Region::loin, Region::rump}};
  // Height of the back at places before the seam, which is near x = 47.
  const auto top = [](const DrawnCoat& coat, double x) {
    const Drawing drawing = drawing_of({}, coat);
    double y = 140;
    while (y > 50 && !holds(drawing.near, {x, y})) y -= 0.1;
    return y;
  };
  CHECK(top(stepped, 40) == Approx(top(even_coat(Coat::curly, 3), 40)).margin(0.3));
  CHECK(top(blended, 40) > top(stepped, 40) + 1);
  CHECK(top(stepped, 56) > top(stepped, 40) + 8);
}

TEST_CASE("hair ends at the ground", "[figure][coat]") {
  for (const Coat coat : coats_with_hair) {
    for (const Ring& ring : drawing_of({}, even_coat(coat, 90)).silhouette) {
      for (const Vec& p : ring) CHECK(p.y >= -1e-6);
    }
  }
}

TEST_CASE("areas of regions share no coat and lie in the figure", "[figure][regions]") {
  for (const Build& build : some_builds()) {
    const Drawing drawing = drawing_of(build, even_coat(Coat::double_coat, 9));
    for (std::size_t i = 0; i < region_count; ++i) {
      CHECK(area(subtract(drawing.areas[i], drawing.silhouette)) < 1);  // the edge is smoothed
      for (std::size_t j = i + 1; j < region_count; ++j) {
        INFO(name(static_cast<Region>(i)) << " and " << name(static_cast<Region>(j)));
        CHECK(area(intersect(drawing.areas[i], drawing.areas[j])) < 0.3);
      }
    }
    double covered = 0;
    for (const Shape& shape : drawing.areas) covered += area(shape);
    CHECK(covered > 0.93 * area(drawing.near));
  }
}

TEST_CASE("coats of 30 mm show larger on a small dog, within bounds", "[figure][coat]") {
  CHECK(coat_scale(Mass::kg(4.6)) > 1.5 * coat_scale(Mass::kg(60)));
  // withers_height(): 4.6 kg about 29 cm, 60 kg about 69 cm; the cap draws the latter as 52 cm.
  CHECK(30 * coat_scale(Mass::kg(4.6)) == Approx(10.3).margin(0.2));
  CHECK(30 * coat_scale(Mass::kg(60)) == Approx(5.77).margin(0.05));
  CHECK(coat_scale(Mass::kg(1)) == Approx(100.0 / 260));
}

TEST_CASE("a drawing stays small enough to be printed fast", "[figure][coat]") {
  // TECH.md, section 4: path output is a fifth of a page's time; the figure there had 300 curves.
  std::mt19937 random(8);
  for (int round = 0; round < 40; ++round) {
    DrawnCoat coat = even_coat(static_cast<Coat>(round % 7), 0);
    for (double& length : coat.length) length = between(random, 0.2, 24);
    const Drawing drawing = drawing_of(any_build(random), coat);
    INFO("coat " << key(coat.coat));
    CHECK(curves(drawing) < 650);
  }
}
}  // namespace furnish
