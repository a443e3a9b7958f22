#include "figure/strands.h"

#include <algorithm>
#include <array>
#include <utility>

namespace furnish {
namespace {
using enum Region;
/// Lengths along a hair at which it may bend, in units of the figure: near the root more often.
constexpr std::array<double, 10> bends{0, 4, 8, 13, 19, 27, 38, 54, 80, 120};
}  // namespace

Stand stand_of(Coat coat) {
  // Outward share, droop, length from which it droops, raggedness.
  switch (coat) {
    case Coat::double_coat:
      return {0.55, 0.35, 34, 0.08};
    case Coat::curly:
      return {0.85, 0.12, 40, 0.03};
    case Coat::drop:
      return {0.34, 0.97, 9, 0.05};
    case Coat::silky:
      return {0.36, 0.85, 12, 0.09};
    case Coat::wire:
      return {0.5, 0.45, 16, 0.14};
    case Coat::smooth:
      return {0.15, 0, 1, 0.03};
    case Coat::hairless:
      break;
  }
  return {0.1, 0, 1, 0};
}

bool beard(Coat coat) {
  return coat == Coat::wire || coat == Coat::drop || coat == Coat::silky || coat == Coat::curly;
}

Ring followed(Vec root, Vec direction, double length, const Stand& stand, double ground) {
  Ring path{root};
  Vec at = root;
  for (std::size_t k = 1; k < bends.size() && bends[k - 1] < length; ++k) {
    const double heavy = std::min(1.0, bends[k - 1] / stand.droop_from) * stand.droop;
    const Vec along = unit(direction * (1 - heavy) + Vec{0, -1} * heavy);
    const Vec next = at + along * (std::min(length, bends[k]) - bends[k - 1]);
    if (next.y < ground) {
      // Cut off at the ground.
      if (at.y > ground) path.push_back(mix(at, next, (at.y - ground) / (at.y - next.y)));
      break;
    }
    at = next;
    path.push_back(at);
  }
  return path;
}

void Sweep::between(const Ring& a, const Ring& b, Region region) {
  const auto of = [](const Ring& path, std::size_t k) {
    return path[std::min(k, path.size() - 1)];
  };
  if (region != region_) part();
  region_ = region;
  const std::size_t longest = std::max(a.size(), b.size());
  if (strips_.size() < longest) strips_.resize(longest);
  for (std::size_t k = 0; k < strips_.size(); ++k) {
    Strip& strip = strips_[k];
    if (k + 1 >= longest) {
      flush(strip);
      continue;
    }
    const Vec a0 = of(a, k), a1 = of(a, k + 1), b0 = of(b, k), b1 = of(b, k + 1);
    const double first = cross(a1 - a0, b1 - a0), second = cross(b1 - a0, b0 - a0);
    const double turn = first + second;
    if (first * second < 0 || turn == 0) {
      flush(strip);
      Ring hull = convex_hull({a0, a1, b0, b1});
      if (hull.size() > 2) out_.push_back({std::move(hull), region_});
      continue;
    }
    if (turn * strip.turn < 0) flush(strip);
    if (strip.inner.empty()) {
      strip.inner.push_back(a0);
      strip.outer.push_back(a1);
    }
    strip.turn = turn;
    strip.inner.push_back(b0);
    strip.outer.push_back(b1);
  }
}

void Sweep::part() {
  for (Strip& strip : strips_) flush(strip);
}

void Sweep::flush(Strip& strip) {
  if (!strip.inner.empty()) {
    strip.inner.insert(strip.inner.end(), strip.outer.rbegin(), strip.outer.rend());
    out_.push_back({std::move(strip.inner), region_});
  }
  strip = {};
}

double scatter(std::uint32_t seed, std::uint32_t index) {
  // Odd multipliers and shifts that let every bit of both reach the upper 24, which a double holds.
  constexpr std::uint32_t seed_step = 0x9E3779B9U, index_step = 0x85EBCA6BU, start = 0x27220A95U;
  constexpr double values = 1U << 24U;
  std::uint32_t h = seed * seed_step + index * index_step + start;
  h = (h ^ (h >> 16)) * 0x7FEB352DU;
  h = (h ^ (h >> 15)) * 0x846CA68BU;
  return static_cast<double>((h ^ (h >> 16)) >> 8) / values;
}

// To the rear and down, as on most dogs; by eye.
Vec lay_of(Region region, Coat coat) {
  switch (region) {
    case muzzle:
      return beard(coat) ? unit({-0.12, -1}) : unit({1, -0.1});
    case eyes:
    case crown:
      return unit({1, 0.1});
    case cheeks:
      return unit({1, -0.5});
    case throat:
      return unit({0.7, -1});
    case neck:
    case shoulders:
    case back:
    case sides:
    case loin:
      return unit({1, -0.2});
    case ruff:
      return unit({0.4, -1});
    case rump:
      return unit({0.8, -0.6});
    case breeches:
      return unit({0.35, -1});
    case belly:
      return unit({0.5, -1});
    case tuck_up:
      return unit({0.6, -0.8});
    case chest:
      return unit({0.4, -1});
    case fringe:
      return unit({0.6, -1});
    case front_legs:
    case rear_legs:
    case hocks:
    case sanitary:
      return {0, -1};
    case feet:
    case pads:
      return unit({-0.3, -1});
    case ears:
      return {0, -1};
    case tail:
      return unit({0.4, -1});
  }
  return {0, -1};
}
}  // namespace furnish
