#include "plan/places.h"

#include <algorithm>

namespace furnish {

bool avoided(Place place, std::span<const Alert> alerts) {
  return std::ranges::any_of(alerts, [&](const Alert& alert) {
    return std::ranges::any_of(
        alert.avoid, [&](const Located<Place>& avoid) { return meets(avoid.value, place); });
  });
}

std::optional<Place> workable(Place place, std::span<const Alert> alerts) {
  if (!avoided(place, alerts)) return place;
  if (place.side != Side::both || !info(place.region).paired) return std::nullopt;
  for (const Side side : {Side::left, Side::right}) {
    if (const Place one{place.region, side}; !avoided(one, alerts)) return one;
  }
  return std::nullopt;
}

bool cuts(const Tool& tool) {
  return !std::holds_alternative<Brush>(tool);
}

int mats_at(const Visit* visit, Place place) {
  int worst = 0;
  if (visit == nullptr) return worst;
  for (const RegionState& state : visit->came_in.regions) {
    if (meets(state.place, place)) worst = std::max(worst, state.mats.value_or(0));
  }
  return worst;
}
}  // namespace furnish
