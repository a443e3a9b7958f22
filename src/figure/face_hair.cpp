#include "figure/face_hair.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "figure/strands.h"

namespace furnish {
namespace {
using enum Region;

// All by eye. Lengths are in units of the figure.

/// A beard has its whole length where the skin faces down, none of it above level; the bridge of
/// the nose keeps a little.
constexpr double beard_at_level = -0.1, beard_each_down = 1.2, least_beard = 0.06;
/// A wire beard stands forward; it is full at the chin and shortens to the corner of the mouth.
constexpr Vec wire_beard{-0.5, -1};
constexpr double wire_beard_outward = 0.3, chin = 9, corner_of_mouth = 26, at_corner = 0.45;

/// Brows stand forward over the eyes, fringes fall over them.
constexpr Vec brow_lay{-1, -0.12}, fringe_lay{-0.7, -1};
constexpr double brow_outward = 0.3;

/// Of a topknot: how high it is tied, half of its width there, how many hairs fan out and how far
/// to either side of upright, and what of the crown's hair falls over the tie.
constexpr double tie_height = 3, tie_half = 2.4, fan = 0.8;
constexpr int fan_hairs = 13;
constexpr double falls = 0.8, least_fall = 5, longest_fall = 14;
constexpr Stand fountain{0, 0.5, 16, 0.12};
constexpr std::uint32_t fountain_seed = 83;
}  // namespace

void grow_face(const Landmark& at, Vec normal, double from_nose, const DrawnCoat& coat,
               Growth& growth) {
  if (at.region == muzzle && beard(coat.coat)) {
    growth.length *= std::clamp(beard_at_level - beard_each_down * normal.y, least_beard, 1.0);
    if (coat.coat == Coat::wire) {
      const double back = std::clamp((from_nose - chin) / (corner_of_mouth - chin), 0.0, 1.0);
      growth.length *= 1 - (1 - at_corner) * back;
      growth.lay = unit(wire_beard);
      growth.outward = wire_beard_outward;
    }
  }
  if (at.brow && coat.brow > 0) {
    growth.length = std::max(growth.length, coat.brow);
    growth.lay = unit(coat.coat == Coat::wire ? brow_lay : fringe_lay);
    growth.outward = brow_outward;
  }
}

void tie_up(const SkinPart& body, const DrawnCoat& coat, Furred& out) {
  const auto top = std::ranges::max_element(
      body, {}, [](const Landmark& l) { return l.region == crown ? l.at.y : -1; });
  const Vec foot = top->at + Vec{-1.5, -2}, tie = foot + Vec{0, tie_height + 2};
  out.locks.push_back({{foot + Vec{-2 * tie_half, 0}, tie + Vec{-tie_half, 0},
                        tie + Vec{tie_half, 0}, foot + Vec{2 * tie_half, 0}},
                       crown});
  const double length = std::clamp(falls * coat.tied, least_fall, longest_fall);
  Sweep sweep(out.locks);
  Ring before;
  for (int i = 0; i < fan_hairs; ++i) {
    const double turn = fan * (2.0 * i / (fan_hairs - 1) - 1);
    const Vec direction{std::sin(turn), std::cos(turn)};
    const double uneven =
        1 + fountain.ragged * (2 * scatter(fountain_seed, static_cast<std::uint32_t>(i)) - 1);
    Ring hair =
        followed(tie + Vec{direction.x * tie_half, -0.5}, direction, length * uneven, fountain);
    out.tips.push_back({hair.back(), unit(hair.back() - hair[hair.size() - 2]), crown, length});
    if (!before.empty()) sweep.between(before, hair, crown);
    before = std::move(hair);
  }
  sweep.part();
}
}  // namespace furnish
