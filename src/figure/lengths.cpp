#include "figure/lengths.h"

#include <algorithm>
#include <cmath>

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

Length withers_height(std::optional<Mass> weight) {
  constexpr double unknown = 12, lightest = 0.5, heaviest = 150;  // kg
  constexpr double mm_at_one_kg = 175;
  const double kg = weight ? weight->in_kg() : unknown;
  return Length::mm(mm_at_one_kg * std::cbrt(std::clamp(kg, lightest, heaviest)));
}

double coat_scale(std::optional<Mass> weight) {
  constexpr double units_high = 100, least = 260, most = 520;  // mm at the withers
  return units_high / std::clamp(withers_height(weight).in_mm(), least, most);
}
}  // namespace furnish
