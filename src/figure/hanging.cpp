// Hair of the tail and the curtain, declared in hair.h.
#include "figure/hair.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

#include "figure/strands.h"

namespace furnish {
namespace {
using enum Region;

// What a tail can carry without hiding the dog; longer hair is drawn so.
constexpr double longest_tail_hair = 30;
}  // namespace

Furred furred(const Tail& tail_part, const DrawnCoat& coat) {
  const Sampled line = sampled(spline(tail_part.spine, Ends::open), 1.5, Ends::open);
  const std::size_t n = line.points.size();
  const Stand stand = stand_of(coat.coat);
  const bool feathered = coat.coat != Coat::smooth && coat.coat != Coat::curly;
  const double full = std::min(coat.at(tail), longest_tail_hair);
  Furred out;
  out.skin.emplace_back();
  Ring back_side;
  std::array<std::vector<Ring>, 2> hairs;
  for (std::size_t i = 0; i < n; ++i) {
    const double u = static_cast<double>(i) / static_cast<double>(n - 1);
    const double knot = u * static_cast<double>(tail_part.radius.size() - 1);
    const auto k = std::min(static_cast<std::size_t>(knot), tail_part.radius.size() - 2);
    const double t = knot - static_cast<double>(k);
    const double radius = tail_part.radius[k] * (1 - t) + tail_part.radius[k + 1] * t;
    const Vec along = unit(line.points[std::min(i + 1, n - 1)] - line.points[i == 0 ? 0 : i - 1]);
    for (const int side : {0, 1}) {
      const Vec normal = left_of(along) * (side == 0 ? 1 : -1);
      const Vec root = line.points[i] + normal * radius;
      (side == 0 ? out.skin.front() : back_side).push_back(root);
      if (u < (tail_part.over_back ? 0.2 : 0.16)) out.hidden.push_back(root);
      // Feathering grows on the underside; on a tail over the back it falls to the flank.
      const bool outer = side == 1;
      const double under = !feathered || outer != tail_part.over_back ? 1 : 0.45;
      const double swell =
          std::clamp(tail_part.over_back ? (u - 0.1) / 0.3 : 0.3 + u / 0.35, 0.0, 1.0) *
          std::clamp((tail_part.over_back ? 0.6 : 0.35) + (1 - u) / 0.4, 0.0, 1.0);
      double share = feathered ? under * swell : std::clamp(0.4 + u / 0.25, 0.0, 1.0);
      share *= 1 + stand.ragged * (2 * scatter(71, static_cast<std::uint32_t>(2 * i) +
                                                       static_cast<std::uint32_t>(side)) -
                                   1);
      double outward = stand.outward;
      if (feathered && outer == tail_part.over_back) outward *= 0.6;
      if (!tail_part.over_back) outward *= 1 - u * u * u;  // at the tip it points along the tail
      Vec direction = unit(normal * outward + along * (1 - outward));
      if (i + 1 == n) direction = unit(along + normal * 0.12);
      Stand hang = stand;
      if (tail_part.over_back && outer) hang.droop *= 0.3;
      if (tail_part.over_back && !outer) hang.droop = std::max(hang.droop, 0.7);
      hairs[static_cast<std::size_t>(side)].push_back(
          followed(root, direction, full * share, hang));
      const Ring& hair = hairs[static_cast<std::size_t>(side)].back();
      const Vec last = hair.size() > 1 ? unit(hair.back() - hair[hair.size() - 2]) : direction;
      if (tail_part.over_back && u < 0.22) out.hidden.push_back(hair.back());
      out.tips.push_back({hair.back(), last, tail, full * share});
    }
  }
  const Vec end = line.points.back(), along_end = unit(end - line.points[n - 2]);
  for (const double turn : {0.25, 0.5, 0.75}) {
    const double angle = turn * std::numbers::pi;
    out.skin.front().push_back(
        end + (left_of(along_end) * std::cos(angle) + along_end * std::sin(angle)) *
                  tail_part.radius.back());
  }
  out.skin.front().insert(out.skin.front().end(), back_side.rbegin(), back_side.rend());
  Sweep sweep(out.locks);
  for (const auto& side : hairs) {
    for (std::size_t i = 0; i + 1 < side.size(); ++i) sweep.between(side[i], side[i + 1], tail);
    sweep.part();
  }
  sweep.between(hairs[0].back(), hairs[1].back(), tail);
  sweep.part();
  return out;
}

Furred curtain(const Build& build, const DrawnCoat& coat) {
  Furred out;
  if (coat.coat != Coat::drop && coat.coat != Coat::silky) return out;
  // Where the hair parts from the flank, from the neck to the rump.
  static const std::array<std::pair<Vec, Region>, 8> line{{{{-21, 104}, neck},
                                                           {{-13, 96}, neck},
                                                           {{-6, 90}, shoulders},
                                                           {{8, 86}, shoulders},
                                                           {{20, 84}, sides},
                                                           {{50, 84}, loin},
                                                           {{66, 84}, rump},
                                                           {{80, 84}, rump}}};
  const Stand stand = stand_of(coat.coat);
  std::vector<Knot> knots;
  for (const auto& [at, region] : line) knots.push_back({built(at, build)});
  const Sampled roots = sampled(spline(knots, Ends::open), 3, Ends::open);
  const auto length_at = [&](std::size_t i) {
    // Mean over neighbours, for a hem without corners.
    double sum = 0, weight = 0;
    for (int k = -4; k <= 4; ++k) {
      const auto j = static_cast<std::ptrdiff_t>(i) + k;
      if (j < 0 || j >= static_cast<std::ptrdiff_t>(roots.points.size())) continue;
      sum += coat.at(line[roots.curve[static_cast<std::size_t>(j)]].second);
      weight += 1;
    }
    return sum / weight;
  };
  Ring last;
  Sweep sweep(out.locks);
  for (std::size_t i = 0; i < roots.points.size(); ++i) {
    const double ragged = 1 + stand.ragged * (2 * scatter(43, static_cast<std::uint32_t>(i)) - 1);
    const double length = length_at(i) * ragged;
    const Region region = line[roots.curve[i]].second;
    // Hair on the ground lies there in an uneven line.
    const double ground = 0.6 + 1.6 * scatter(47, static_cast<std::uint32_t>(i));
    Ring hair = followed(roots.points[i], unit({0.1, -1}), length, stand, ground);
    out.tips.push_back({hair.back(), {0, -1}, region, length});
    if (!last.empty()) sweep.between(last, hair, region);
    last = std::move(hair);
  }
  sweep.part();
  return out;
}
}  // namespace furnish
