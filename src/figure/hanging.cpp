#include "figure/hanging.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <utility>

#include "figure/strands.h"

namespace furnish {
namespace {
using enum Region;

// All by eye. Lengths are in units of the figure; a place on the tail is its share of the way from
// root to tip.

constexpr double between_tail_hairs = 1.5;
/// What a tail can carry without hiding the dog; longer hair is drawn so.
constexpr double longest_tail_hair = 30;
/// Of feathering: how long it is on the side that has less of it, and how far it stands off there.
constexpr double thin_side_length = 0.45, thin_side_outward = 0.6, thin_side_of_plume = 0.7;
/// The very tip's hair goes on in the tail's own direction, and this much to its side.
constexpr double tip_spread = 0.12;
/// Up to here the root of a tail lies in the rump, and that of one over the back with its hair.
constexpr double root_in_rump = 0.16, curled_root_in_rump = 0.2, curled_hair_in_rump = 0.14;
/// On a tail over the back: how much less hair gives in to its weight on the outside, where it lies
/// on the tail, and how much it does at least on the inside, where it falls to the flank.
constexpr double outside_droop = 0.3, inside_least_droop = 0.7;

/// A ball has its middle here, and its stem is bare. Hair on a carrot, and on a smooth tail, is so
/// much shorter at the tip. A flag has little on its upper side.
constexpr double ball_middle = 0.8, carrot_tapers = 0.6, close_tapers = 0.8, flag_upper_side = 0.2;
constexpr int ball_corners = 40;

constexpr double between_curtain_hairs = 3;
/// Hairs on either side over which the curtain's length is evened, for a hem without corners.
constexpr std::ptrdiff_t hem_reach = 4;
/// Down, and a little to the rear.
constexpr Vec curtain_fall{0.1, -1};
/// Hair on the ground lies there in an uneven line, so far above it at least and so much more.
constexpr double least_over_ground = 0.6, uneven_over_ground = 1.6;

// One for each thing that varies.
constexpr std::uint32_t tail_seed = 71, curtain_seed = 43, ground_seed = 47;

/// How much longer or shorter than its neighbours one hair is.
double uneven(const Stand& stand, std::uint32_t seed, std::uint32_t index) {
  return 1 + stand.ragged * (2 * scatter(seed, index) - 1);
}

/// A place on a tail's line at which a hair grows on either side.
struct Stop {
  Vec at, along;  ///< along the line to the tip, unit length
  double gone;    ///< from 0 at the root to 1 at the tip
  double radius;  ///< of the tail without coat
};

/// The radii are those at even steps from root to tip.
double radius_at(const std::vector<double>& radii, double gone) {
  const double place = gone * static_cast<double>(radii.size() - 1);
  const auto before = std::min(static_cast<std::size_t>(place), radii.size() - 2);
  const double t = place - static_cast<double>(before);
  return radii[before] * (1 - t) + radii[before + 1] * t;
}

std::vector<Stop> stops_of(const Tail& bare, double coarse) {
  const Ring line =
      sampled(spline(bare.spine, SplineEnds::open), between_tail_hairs * coarse, SplineEnds::open)
          .points;
  const std::size_t last = line.size() - 1;
  std::vector<Stop> out;
  for (std::size_t i = 0; i <= last; ++i) {
    const double gone = static_cast<double>(i) / static_cast<double>(last);
    const Vec along = unit(line[std::min(i + 1, last)] - line[i == 0 ? 0 : i - 1]);
    out.push_back({line[i], along, gone, radius_at(bare.radius, gone)});
  }
  return out;
}

/// The sides of a tail, looking from its root to its tip: of one carried behind the dog the left is
/// the upper one, of one over the back the inside of its curl.
enum class TailSide : std::uint8_t { left, right };
constexpr std::array both_sides{TailSide::left, TailSide::right};

Vec normal_of(const Stop& stop, TailSide side) {
  return left_of(stop.along) * (side == TailSide::left ? 1 : -1);
}

class TailCoat {
 public:
  TailCoat(const Tail& bare, const DrawnCoat& coat)
      : over_back_(bare.over_back),
        feathered_(coat.coat != Coat::smooth && coat.coat != Coat::curly),
        close_(coat.coat == Coat::smooth),
        end_(bare.over_back ? TailEnd::natural : coat.tail_end),
        full_(std::min(coat.at(tail), longest_tail_hair)),
        stand_(stand_of(coat.coat)) {}

  /// Round the ball on the tail's end, with the hairs that end there; none for other tails.
  void add_ball(const std::vector<Stop>& stops, Furred& out) const {
    if (end_ != TailEnd::ball) return;
    const Stop& middle = *std::ranges::lower_bound(stops, ball_middle, {}, &Stop::gone);
    Ring ring;
    for (int i = 0; i < ball_corners; ++i) {
      const double angle = -2 * std::numbers::pi * i / ball_corners;
      const Vec outward{std::cos(angle), std::sin(angle)};
      ring.push_back(middle.at + outward * (middle.radius + full_));
      out.tips.push_back({ring.back(), outward, tail, full_});
    }
    out.locks.push_back({std::move(ring), tail});
  }

  /// As share of the longest hair, before neighbours differ.
  double share_at(const Stop& stop, TailSide side) const {
    switch (end_) {
      case TailEnd::ball:
        return 0;
      case TailEnd::carrot:
        return 1 - carrot_tapers * stop.gone;
      case TailEnd::flag:
        return (thin(side) ? flag_upper_side : 1) * flag_at(stop.gone);
      case TailEnd::natural:
        break;
    }
    // Even coats only have less at the root, and close ones close to a point.
    if (!feathered_) {
      const double at_root = std::clamp(0.4 + stop.gone / 0.25, 0.0, 1.0);
      return close_ ? at_root * (1 - close_tapers * stop.gone) : at_root;
    }
    const double thin_length = over_back_ ? thin_side_of_plume : thin_side_length;
    return (thin(side) ? thin_length : 1) * feathering_at(stop.gone);
  }

  double length_at(const Stop& stop, TailSide side, std::uint32_t index) const {
    const double share = share_at(stop, side) *
                         uneven(stand_, tail_seed, 2 * index + static_cast<std::uint32_t>(side));
    return full_ * share;
  }

  Vec direction_at(const Stop& stop, TailSide side) const {
    const Vec normal = normal_of(stop, side);
    if (stop.gone == 1) return unit(stop.along + normal * tip_spread);
    double outward = stand_.outward;
    if (thin(side)) outward *= thin_side_outward;
    // Towards the tip hair turns to the way the tail points.
    if (!over_back_) outward *= 1 - stop.gone * stop.gone * stop.gone;
    return unit(normal * outward + stop.along * (1 - outward));
  }

  Stand stand_on(TailSide side) const {
    Stand out = stand_;
    if (!over_back_) return out;
    if (side == TailSide::right) {
      out.droop *= outside_droop;
    } else {
      out.droop = std::max(out.droop, inside_least_droop);
    }
    return out;
  }

 private:
  /// Feathering grows on the underside; on a tail over the back it falls to the flank, inside.
  bool thin(TailSide side) const { return feathered_ && (side == TailSide::right) == over_back_; }

  /// As share of the longest: swells from the root and shortens again to the tip. Behind the dog it
  /// has a third at the root and is full at a quarter of the way; over the back it begins at a
  /// tenth, outside the coat of the rump, and is full at four tenths.
  double feathering_at(double gone) const {
    const double swelling = over_back_ ? (gone - 0.1) / 0.3 : 0.3 + gone / 0.35;
    const double shortening = (over_back_ ? 0.6 : 0.35) + (1 - gone) / 0.4;
    return std::clamp(swelling, 0.0, 1.0) * std::clamp(shortening, 0.0, 1.0);
  }

  /// A triangle: longest a third of the way from the root, nothing at the tip.
  static double flag_at(double gone) {
    return std::clamp(0.2 + gone / 0.4, 0.0, 1.0) * std::clamp(1.5 * (1 - gone), 0.0, 1.0);
  }

  bool over_back_, feathered_, close_;
  TailEnd end_;
  double full_;  ///< length of the longest hair
  Stand stand_;
};

/// The rounded end of the bare tail, from its left side to its right.
void add_end(const Stop& tip, Vec along, double radius, Ring& skin) {
  for (const double turn : {0.25, 0.5, 0.75}) {
    const double angle = turn * std::numbers::pi;
    skin.push_back(tip.at + (left_of(along) * std::cos(angle) + along * std::sin(angle)) * radius);
  }
}

/// Where the hair parts from the flank on the medium dog, from the neck to the rump; each stretch
/// with the region that its hair belongs to.
constexpr std::array<std::pair<Vec, Region>, 8> parting{{{{-21, 104}, neck},
                                                         {{-13, 96}, neck},
                                                         {{-6, 90}, shoulders},
                                                         {{8, 86}, shoulders},
                                                         {{20, 84}, sides},
                                                         {{50, 84}, loin},
                                                         {{66, 84}, rump},
                                                         {{80, 84}, rump}}};

class CurtainRoots {
 public:
  CurtainRoots(const Build& build, const DrawnCoat& coat) : coat_(coat) {
    std::vector<Knot> knots;
    for (const auto& [at, region] : parting) knots.push_back({built(at, build)});
    line_ = sampled(spline(knots, SplineEnds::open), between_curtain_hairs * coat.coarse,
                    SplineEnds::open);
  }

  std::size_t size() const { return line_.points.size(); }
  Vec at(std::size_t i) const { return line_.points[i]; }
  Region region(std::size_t i) const { return parting[line_.curve[i]].second; }

  /// Mean over the neighbours.
  double length(std::size_t i) const {
    const auto at = static_cast<std::ptrdiff_t>(i);
    const auto first = std::max<std::ptrdiff_t>(at - hem_reach, 0);
    const auto last = std::min(at + hem_reach, static_cast<std::ptrdiff_t>(size()) - 1);
    double sum = 0;
    for (auto k = first; k <= last; ++k) sum += coat_.at(region(static_cast<std::size_t>(k)));
    return sum / static_cast<double>(last - first + 1);
  }

 private:
  const DrawnCoat& coat_;
  Sampled line_;
};
}  // namespace

Furred furred(const Tail& bare, const DrawnCoat& drawn) {
  const std::vector<Stop> stops = stops_of(bare, drawn.coarse);
  const TailCoat coat(bare, drawn);
  const double hidden_root = bare.over_back ? curled_root_in_rump : root_in_rump;
  Furred out;
  std::array<Ring, 2> skin;
  std::array<std::vector<Ring>, 2> hairs;
  for (std::size_t i = 0; i < stops.size(); ++i) {
    const Stop& stop = stops[i];
    for (const TailSide side : both_sides) {
      const auto s = static_cast<std::size_t>(side);
      const Vec root = stop.at + normal_of(stop, side) * stop.radius;
      const Vec direction = coat.direction_at(stop, side);
      const double length = coat.length_at(stop, side, static_cast<std::uint32_t>(i));
      const Ring hair = followed(root, direction, length, coat.stand_on(side));
      const Vec last = hair.size() > 1 ? unit(hair.back() - hair[hair.size() - 2]) : direction;
      skin[s].push_back(root);
      if (stop.gone < hidden_root) out.hidden.push_back(root);
      if (bare.over_back && stop.gone < curled_hair_in_rump) out.hidden.push_back(hair.back());
      out.tips.push_back({hair.back(), last, tail, length});
      hairs[s].push_back(hair);
    }
  }
  auto& [left_skin, right_skin] = skin;
  add_end(stops.back(), unit(stops.back().at - stops[stops.size() - 2].at), bare.radius.back(),
          left_skin);
  left_skin.insert(left_skin.end(), right_skin.rbegin(), right_skin.rend());
  out.skin.push_back(std::move(left_skin));

  Sweep sweep(out.locks);
  for (const std::vector<Ring>& side : hairs) {
    for (std::size_t i = 0; i + 1 < side.size(); ++i) sweep.between(side[i], side[i + 1], tail);
    sweep.part();
  }
  sweep.between(hairs[0].back(), hairs[1].back(), tail);
  sweep.part();
  coat.add_ball(stops, out);
  return out;
}

Furred curtain(const Build& build, const DrawnCoat& coat) {
  Furred out;
  if (coat.coat != Coat::drop && coat.coat != Coat::silky) return out;
  const CurtainRoots roots(build, coat);
  const Stand stand = stand_of(coat.coat);
  Ring before;
  Sweep sweep(out.locks);
  for (std::size_t i = 0; i < roots.size(); ++i) {
    const auto index = static_cast<std::uint32_t>(i);
    const double length = roots.length(i) * uneven(stand, curtain_seed, index);
    const double ground = least_over_ground + uneven_over_ground * scatter(ground_seed, index);
    Ring hair = followed(roots.at(i), unit(curtain_fall), length, stand, ground);
    out.tips.push_back({hair.back(), {0, -1}, roots.region(i), length});
    if (!before.empty()) sweep.between(before, hair, roots.region(i));
    before = std::move(hair);
  }
  sweep.part();
  return out;
}
}  // namespace furnish
