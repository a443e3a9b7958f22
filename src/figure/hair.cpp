#include "figure/hair.h"

#include <algorithm>

#include "figure/face_hair.h"
#include "figure/strands.h"

namespace furnish {
namespace {
using enum Region;

// By eye. Lengths are in units of the figure.
constexpr double between_hairs = 2.4;
/// Shares of the usual lean outwards where a coat lies flatter.
constexpr double flat_outward = 0.4, neck_outward = 0.75;
/// Hair points out of the skin by this much at least, as the cosine to its normal.
constexpr double least_out = 0.12;
/// Coats that lie flatter on face, legs and feet than on the trunk.
bool flat_there(Region region, Coat coat) {
  if (coat == Coat::curly) return false;
  switch (region) {
    case muzzle:
    case eyes:
      return coat == Coat::double_coat || coat == Coat::smooth;
    case cheeks:
    case crown:
      return coat != Coat::wire;
    case front_legs:
    case rear_legs:
    case hocks:
      return coat != Coat::wire && coat != Coat::drop;
    case feet:
    case pads:
    case ears:
      return true;
    default:
      return false;
  }
}

struct Root {
  Vec at, direction;
  Region region;
  Skin skin;
  double length;
};

bool steps(Region a, Region b, const DrawnCoat& coat) {
  if (a == b) return false;
  const Seam seam = a < b ? Seam{a, b} : Seam{b, a};
  return std::ranges::find(coat.stepped, seam) != coat.stepped.end();
}

/// Mean over the outline within `reach` on both sides, nearer roots counting more; ends at bare
/// skin and at seams that show as a step.
template <typename Value, typename Of>
Value blended(const std::vector<Root>& roots, std::size_t i, double reach, const DrawnCoat& coat,
              Of of) {
  Value sum = of(roots[i]) * reach;
  double weight = reach;
  for (const int way : {-1, 1}) {
    double gone = 0;
    std::size_t at = i;
    for (std::size_t k = 1; k < roots.size(); ++k) {
      const std::size_t next = (at + roots.size() + static_cast<std::size_t>(way)) % roots.size();
      gone += distance(roots[at].at, roots[next].at);
      if (gone >= reach || roots[next].skin == Skin::bare) break;
      if (steps(roots[at].region, roots[next].region, coat)) break;
      sum = sum + of(roots[next]) * (reach - gone);
      weight += reach - gone;
      at = next;
    }
  }
  return sum * (1 / weight);
}

std::vector<Root> roots_of(const SkinPart& part, const DrawnCoat& coat) {
  std::vector<Knot> knots;
  for (const Landmark& landmark : part) knots.push_back({landmark.at, landmark.corner});
  const Sampled line =
      sampled(spline(knots, SplineEnds::closed), between_hairs * coat.coarse, SplineEnds::closed);
  const std::size_t n = line.points.size();
  const Stand stand = stand_of(coat.coat);
  const double nose = std::ranges::min_element(line.points, {}, &Vec::x)->x;
  std::vector<Root> roots;
  for (std::size_t i = 0; i < n; ++i) {
    const Landmark& from = part[line.curve[i]];
    const Vec along = line.points[(i + 1) % n] - line.points[(i + n - 1) % n];
    const Vec normal = unit(left_of(along));
    Growth growth{lay_of(from.region, coat.coat), stand.outward, coat.at(from.region)};
    if (flat_there(from.region, coat.coat)) growth.outward *= flat_outward;
    if (from.region == neck) growth.outward *= neck_outward;
    grow_face(from, normal, line.points[i].x - nose, coat, growth);
    Vec direction = unit(normal * growth.outward + growth.lay * (1 - growth.outward));
    // Hair never grows into the skin.
    const double out = dot(direction, normal);
    if (out < least_out) direction = unit(direction + normal * (least_out - out));
    roots.push_back({line.points[i], direction, from.region, from.skin,
                     from.skin == Skin::bare ? 0 : growth.length});
  }
  return roots;
}
}  // namespace

Shape Furred::shape() const {
  std::vector<Ring> rings = skin;
  for (const Lock& lock : locks) rings.push_back(lock.hull);
  return unite(rings);
}

Furred furred(const SkinPart& part, const DrawnCoat& coat, std::uint32_t seed) {
  const std::vector<Root> roots = roots_of(part, coat);
  const Stand stand = stand_of(coat.coat);
  Furred out;
  out.skin.emplace_back();
  std::vector<Ring> hairs;
  for (std::size_t i = 0; i < roots.size(); ++i) {
    const Root& root = roots[i];
    out.skin.front().push_back(root.at);
    const Vec direction = unit(
        blended<Vec>(roots, i, blend_reach / 2, coat, [](const Root& r) { return r.direction; }));
    double length =
        root.skin == Skin::bare
            ? 0
            : blended<double>(roots, i, blend_reach, coat, [](const Root& r) { return r.length; });
    length *= 1 + stand.ragged * (2 * scatter(seed, static_cast<std::uint32_t>(i)) - 1);
    hairs.push_back(followed(root.at, direction, length, stand));
    if (root.skin == Skin::covered) out.hidden.push_back(root.at);
    if (root.skin == Skin::coated) {
      const Ring& hair = hairs.back();
      const Vec last = hair.size() > 1 ? unit(hair.back() - hair[hair.size() - 2]) : direction;
      out.tips.push_back({hair.back(), last, root.region, length});
    }
  }
  Sweep sweep(out.locks);
  for (std::size_t i = 0; i < roots.size(); ++i) {
    if (roots[i].skin == Skin::covered) {
      sweep.part();
    } else {
      sweep.between(hairs[i], hairs[(i + 1) % hairs.size()], roots[i].region);
    }
  }
  sweep.part();
  return out;
}
}  // namespace furnish
