#include "figure/areas.h"

#include <algorithm>
#include <set>
#include <utility>

#include "figure/drawing.h"

namespace furnish {
namespace {
using enum Region;
constexpr double far = 300;

/// A region's share of the medium dog's trunk and legs, out to where no hair reaches; together they
/// cover it. Earlier ones take from later ones.
struct Share {
  Region region;
  enum class Of : std::uint8_t { body, front, rear } part;
  Ring ring;
};
using Of = Share::Of;

const std::vector<Share>& shares() {
  static const std::vector<Share> table{
      {pads, Of::front, {{-far, 2.2}, {30, 2.2}, {30, -far}, {-far, -far}}},
      {pads, Of::rear, {{30, 2.2}, {far, 2.2}, {far, -far}, {30, -far}}},
      {feet, Of::front, {{-far, 11.5}, {30, 11.5}, {30, -far}, {-far, -far}}},
      {feet, Of::rear, {{30, 11.5}, {far, 11.5}, {far, -far}, {30, -far}}},
      {hocks, Of::rear, {{74, 28}, {85, 31}, {88, 38}, {far, 38}, {far, 0}, {60, 0}, {60, 28}}},
      {breeches,
       Of::rear,
       {{80, 93}, {77, 78}, {76.5, 60}, {78.5, 46}, {85, 31}, {far, 31}, {far, 88.5}}},
      {fringe, Of::front, {{-7.6, 0}, {-7.6, 44}, {-3, 54}, {30, 54}, {30, 0}}},
      {front_legs, Of::front, {{-far, 56}, {-3, 54}, {30, 54}, {30, 0}, {-far, 0}}},
      {rear_legs,
       Of::rear,
       {{61, 60}, {63, 74}, {70, 82}, {79, 86}, {far, 86}, {far, 0}, {0, 0}, {0, 60}}},
      {eyes,
       Of::body,
       {{-50.5, 124.2}, {-44.4, 124.2}, {-43.6, 120.4}, {-47, 118.4}, {-51, 119.6}}},
      {muzzle,
       Of::body,
       {{-far, 122}, {-52.4, 122}, {-50.6, 117}, {-50.2, 110}, {-48.6, 50}, {-far, 50}}},
      {crown,
       Of::body,
       {{-far, 122},
        {-52.4, 122},
        {-50.6, 119},
        {-45, 124.6},
        {-38, 125},
        {-25, 127},
        {-22, 140},
        {-18, far},
        {-far, far}}},
      {cheeks,
       Of::body,
       {{-52, 122},
        {-45, 124.6},
        {-38, 125},
        {-31, 126},
        {-34, 112},
        {-39, 103.6},
        {-44, 90},
        {-55, 90}}},
      {throat,
       Of::body,
       {{-60, 103},
        {-39, 104},
        {-34, 112},
        {-29.6, 106},
        {-23.4, 95},
        {-27, 87.6},
        {-far, 80},
        {-far, 60}}},
      {neck,
       Of::body,
       {{-31, 126},
        {-34, 112},
        {-29.6, 106},
        {-23.4, 95},
        {-9, 101},
        {1, 103},
        {4, far},
        {-20, far},
        {-24, 140}}},
      {ruff,
       Of::body,
       {{-23.4, 95},
        {-9, 101},
        {1, 103},
        {-5, 90},
        {-14, 80},
        {-27, 75},
        {-far, 70},
        {-far, 90},
        {-27, 87.6}}},
      {chest,
       Of::body,
       {{-27, 75}, {-14, 80}, {-9, 66}, {-11, 52}, {-1, 43}, {0, -far}, {-far, -far}, {-far, 70}}},
      {shoulders,
       Of::body,
       {{1, 103},
        {3, 130},
        {11, 101.4},
        {17, 90},
        {13, 70},
        {6, 56},
        {-11, 52},
        {-9, 66},
        {-14, 80},
        {-5, 90}}},
      {back, Of::body, {{2, 104}, {17, 90}, {46, 90}, {47, far}, {2, far}}},
      {loin, Of::body, {{46, 90}, {52, 80}, {63, 78}, {65, 92}, {66, far}, {46, far}}},
      {rump,
       Of::body,
       {{65, 92}, {63, 78}, {70, 82}, {79, 86}, {80, 93}, {far, 88}, {far, far}, {65, far}}},
      {rump,
       Of::rear,
       {{60, 92}, {63, 76}, {70, 82}, {79, 86}, {80, 93}, {far, 88}, {far, far}, {60, far}}},
      {sanitary, Of::body, {{58, 56}, {57.6, 61.4}, {61, 64.6}, {64.6, 64}, {64, 50}}},
      {tuck_up, Of::body, {{50, 57}, {55, 63}, {61, 67}, {65, 66}, {68, 30}, {51, 30}}},
      {belly,
       Of::body,
       {{-11, 52}, {6, 56}, {28, 57.4}, {50, 61}, {52, 30}, {52, -far}, {-1, -far}}},
      {sides,
       Of::body,
       {{6, 56}, {13, 70}, {17, 90}, {46, 90}, {52, 76}, {66, 64}, {50, 58}, {28, 57.4}}},
      {sides, Of::body, {{-20, 40}, {-20, 100}, {70, 100}, {70, 40}}},
  };
  return table;
}

Shape hair_of(const Furred& part, Region region) {
  std::vector<Ring> rings;
  for (const Furred::Lock& lock : part.locks) {
    if (lock.region == region) rings.push_back(lock.hull);
  }
  return rings.empty() ? Shape{} : unite(rings);
}

/// True if the boxes round two shapes overlap.
bool meet(const Shape& a, const Shape& b) {
  const auto box = [](const Shape& shape) {
    Vec low{far * 2, far * 2}, high{-far * 2, -far * 2};
    for (const Ring& ring : shape) {
      for (const Vec& p : ring) {
        low = {std::min(low.x, p.x), std::min(low.y, p.y)};
        high = {std::max(high.x, p.x), std::max(high.y, p.y)};
      }
    }
    return std::pair{low, high};
  };
  const auto [al, ah] = box(a);
  const auto [bl, bh] = box(b);
  return al.x < bh.x && bl.x < ah.x && al.y < bh.y && bl.y < ah.y;
}

Ring built_ring(const Ring& ring, const Build& build) {
  Ring out;
  for (const Vec& p : ring) out.push_back(built(p, build));
  return out;
}
}  // namespace

std::array<Shape, region_count> areas_of(const Build& build, const CoatedParts& parts,
                                         const Drawing& drawing,
                                         const std::optional<std::vector<Region>>& only) {
  std::array<Shape, region_count> out;
  const auto wanted = [&](Region region) {
    return !only || std::ranges::find(*only, region) != only->end();
  };
  const auto area_of = [&](Region region) -> Shape& {
    return out[static_cast<std::size_t>(region)];
  };
  area_of(ears) = drawing.ear_shape;
  area_of(tail) = drawing.tail_shape;
  // The tail's root lies inside the rump, unless the tail is over the back.
  if (area(intersect(area_of(tail), drawing.near)) > 0.95 * area(area_of(tail))) {
    area_of(tail) = subtract(area_of(tail), unite(Shape{parts.body.skin}, Shape{parts.rear.skin}));
  }
  std::vector<Shape> taken{area_of(ears), area_of(tail)};
  const auto take = [&](Region region, const Shape& shape) {
    if (shape.empty()) return;
    if (!wanted(region)) {
      taken.push_back(shape);
      return;
    }
    Shape before;
    for (const Shape& other : taken) {
      if (meet(other, shape)) before.insert(before.end(), other.begin(), other.end());
    }
    const Shape mine = subtract(shape, before);
    Shape& whole = area_of(region);
    whole = whole.empty() ? mine : unite(whole, mine);
    taken.push_back(mine);
  };
  // Hair that hangs over others is seen in front of them.
  for (const Region region : {neck, shoulders, sides, loin, rump}) {
    take(region, subtract(hair_of(parts.fall, region), Shape{parts.body.skin}));
  }
  std::set<std::pair<Region, const Furred*>> done;
  const auto last = std::ranges::find_if(shares().rbegin(), shares().rend(),
                                         [&](const Share& share) { return wanted(share.region); });
  for (const Share& share : std::ranges::subrange(shares().begin(), last.base())) {
    const Furred& part = share.part == Of::front  ? parts.front
                         : share.part == Of::rear ? parts.rear
                                                  : parts.body;
    const Shape skin = intersect(Shape{part.skin}, Shape{built_ring(share.ring, build)});
    const Shape hair =
        done.insert({share.region, &part}).second ? hair_of(part, share.region) : Shape{};
    take(share.region, hair.empty() ? skin : unite(skin, hair));
  }
  for (Shape& shape : out) shape = without_specks(shape, 0.6);
  return out;
}

Vec middle_of(Region region, const Build& build) {
  const auto medium = [&]() -> Vec {
    switch (region) {
      case muzzle:
        return {-59, 113};
      case cheeks:
        return {-43, 114};
      case crown:
        return {-44, 128};
      case throat:
        return {-33, 101};
      case ears:
        return {-33.6, 136};
      case eyes:
        return {-47.5, 121.6};
      case neck:
        return {-17, 112};
      case ruff:
        return {-18, 88};
      case shoulders:
        return {2, 80};
      case back:
        return {30, 95};
      case sides:
        return {30, 74};
      case loin:
        return {56, 90};
      case rump:
        return {73, 91};
      case chest:
        return {-18, 66};
      case belly:
        return {24, 53};
      case tuck_up:
        return {57, 64};
      case front_legs:
        return {-10.5, 36};
      case rear_legs:
        return {70, 56};
      case hocks:
        return {88, 21};
      case fringe:
        return {-4.6, 34};
      case breeches:
        return {82, 68};
      case tail:
        return {92, 84};
      case feet:
        return {-13, 6};
      case pads:
        return {-11, 1.2};
      case sanitary:
        return {61, 61};
    }
    return {};
  }();
  return built(medium, build);
}
}  // namespace furnish
