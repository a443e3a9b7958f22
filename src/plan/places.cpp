#include "plan/places.h"

#include <algorithm>
#include <set>

#include "trade/mats.h"

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

std::optional<Place> without(Place place, Place taken) {
  if (!meets(place, taken)) return place;
  if (place.side != Side::both || taken.side == Side::both) return std::nullopt;
  return Place{place.region, taken.side == Side::left ? Side::right : Side::left};
}

bool cuts(const Tool& tool) {
  return !std::holds_alternative<Brush>(tool);
}

bool clips(const Tool& tool) {
  return std::holds_alternative<Clip>(tool) || std::holds_alternative<CombOver>(tool);
}

const RegionState* measured_at(std::span<const RegionState> states, Place place) {
  const RegionState* found = nullptr;
  for (const RegionState& state : states) {
    if (!state.length || !meets(state.place, place)) continue;
    if (found == nullptr || state.place == place) found = &state;
  }
  return found;
}

std::vector<Place> felted_places(const Visit* visit) {
  std::vector<Place> felt, cut_out;
  std::set<Region> body;
  if (visit == nullptr) return felt;
  for (const RegionState& state : visit->came_in.regions) {
    const int grade = state.mats.value_or(0);
    if (grade >= worst_mats) felt.push_back(state.place);
    if (grade < mats_cut_out || !in_group(state.place.region, Group::body)) continue;
    body.insert(state.place.region);
    if (grade < worst_mats) cut_out.push_back(state.place);
  }
  if (2 * body.size() > info(Group::body).members.size()) {
    felt.insert(felt.end(), cut_out.begin(), cut_out.end());
  }
  std::ranges::sort(felt);
  return felt;
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
