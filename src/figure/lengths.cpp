#include <algorithm>
#include <cmath>

#include "figure/figure.h"

namespace furnish {
namespace {
using enum Region;

/// Which region an unnamed one is trimmed like, in a coat that keeps growing; itself if none.
Region follows(Region region) {
  switch (region) {
    case eyes:
      return muzzle;
    case cheeks:
    case throat:
      return crown;
    case ruff:
      return neck;
    case neck:
    case shoulders:
    case sides:
    case loin:
    case rump:
      return back;
    case chest:
    case tuck_up:
      return belly;
    case belly:
      return sides;
    case sanitary:
      return belly;
    case fringe:
      return front_legs;
    case hocks:
    case breeches:
      return rear_legs;
    case rear_legs:
      return front_legs;
    default:
      return region;
  }
}

bool keeps_short_coat(Coat coat) {
  return !info(coat).keeps_growing && coat != Coat::wire && coat != Coat::silky;
}
}  // namespace

std::array<Length, region_count> drawn_lengths(const FigureInput& input) {
  const Coat coat = input.coat.value_or(Coat::double_coat);
  std::array<Length, region_count> out{};
  for (std::size_t i = 0; i < region_count; ++i) {
    const auto region = static_cast<Region>(i);
    Region like = region;
    const auto left = [&]() -> const std::optional<LengthRange>& {
      return input.left[static_cast<std::size_t>(like)];
    };
    if (!keeps_short_coat(coat)) {
      while (!left() && follows(like) != like) like = follows(like);
    }
    out[i] = left() ? (left()->low + left()->high) / 2 : natural_length(coat, region);
  }
  return out;
}

bool needs_both_sides(const FigureInput& input) {
  return std::ranges::any_of(input.spots,
                             [](const FigureSpot& spot) { return spot.place.side != Side::both; });
}

Length withers_height(std::optional<Mass> weight) {
  constexpr double unknown = 12;  // kg
  const double kg = weight ? weight->in_kg() : unknown;
  return Length::mm(175 * std::cbrt(std::clamp(kg, 0.5, 150.0)));
}

double coat_scale(std::optional<Mass> weight) {
  return 100 / std::clamp(withers_height(weight).in_mm(), 260.0, 520.0);
}
}  // namespace furnish
