#include "plan/last_visit.h"

#include <algorithm>
#include <tuple>
#include <utility>

#include "plan/places.h"
#include "trade/mats.h"

namespace furnish {
namespace {
void take_off(std::vector<MattedPlace>& from, Place place) {
  std::vector<MattedPlace> out;
  for (MattedPlace one : from) {
    const auto rest = without(one.place, place);
    if (!rest) continue;
    one.place = *rest;
    out.push_back(one);
  }
  from = std::move(out);
}

void look(std::vector<MattedPlace>& at, std::span<const RegionState> states) {
  for (const RegionState& state : states) {
    if (!state.mats && !state.encircling) continue;
    take_off(at, state.place);
    const int grade = state.mats.value_or(0);
    if (grade >= mats_cut_out || state.encircling) {
      at.push_back({state.place, grade, state.encircling});
    }
  }
}

/// Brush and stripping knife leave felt where it is.
bool takes_mats_off(const Tool& tool) {
  return cuts(tool) && !std::holds_alternative<HandStrip>(tool);
}

void cut(std::vector<MattedPlace>& at, const Pet& pet, const Visit& visit) {
  for (const PlacedEntry& rule : visit.done) {
    if (takes_mats_off(rule.entry.tool)) take_off(at, rule.place);
  }
  if (visit.work != Work::done) return;
  for (const TrimPart& part : pet.trim) {
    auto place = workable(part.place, pet.alerts);
    // What was done otherwise there was not done as planned.
    for (const PlacedEntry& rule : visit.done) {
      if (place) place = without(*place, rule.place);
    }
    if (place && takes_mats_off(part.entry.tool)) take_off(at, *place);
  }
}
}  // namespace

std::vector<MattedPlace> mats_left(const Pet& pet, std::span<const Visit* const> seen) {
  std::vector<MattedPlace> out;
  for (const Visit* const visit : seen) {
    if (visit->work == Work::done) out.clear();
    look(out, visit->came_in.regions);
    for (const Place place : visit->came_in.well) take_off(out, place);
    if (is_open(*visit)) continue;
    cut(out, pet, *visit);
    look(out, visit->went_out);
  }
  std::ranges::stable_sort(out, {}, &MattedPlace::place);
  return out;
}

std::optional<LastVisit> last_visit(std::span<const Visit* const> history) {
  if (history.empty()) return std::nullopt;
  const Visit& visit = *history.back();
  LastVisit out;
  out.date = visit.date.value;
  out.number = visit.number;
  out.groomer = visit.groomer;
  out.not_done = visit.not_done;
  for (const RegionState& state : visit.came_in.regions) {
    const int grade = state.mats.value_or(0);
    if (grade > 0 || state.encircling) out.mats.push_back({state.place, grade, state.encircling});
  }
  std::ranges::stable_sort(out.mats, {}, [](const MattedPlace& one) {
    return std::tuple(!one.encircling, -one.grade, one.place);
  });
  out.behaviour = visit.came_in.behaviour;
  out.helped = visit.came_in.helped;
  out.otherwise = visit.done;
  if (visit.weight) out.weight = visit.weight->value;
  out.told = visit.told.value;
  if (visit.next) out.next = visit.next->value;
  out.consents = visit.consents;
  for (const Photo& photo : visit.photos) {
    ++(photo.when == PhotoTime::before ? out.photos_before : out.photos_after);
  }
  return out;
}

std::optional<LastVisit> visit_before(std::span<const Visit* const> history,
                                      std::span<const Visit* const> seen, Date today) {
  // One of today that is being written is not over yet.
  const auto before = [&](std::span<const Visit* const> visits) {
    return visits.first(static_cast<std::size_t>(
        std::ranges::find_if(
            visits,
            [&](const Visit* visit) { return visit->date.value >= today && is_open(*visit); }) -
        visits.begin()));
  };
  const auto all = before(seen), groomed = before(history);
  for (std::size_t n = all.size(); n > 0 && all[n - 1]->work != Work::done; --n) {
    LastVisit out = *last_visit(all.first(n));
    if (!is_open(*all[n - 1])) {
      if (!groomed.empty()) out.groomed = groomed.back()->date.value;
      return out;
    }
    if (out.behaviour.empty() && out.helped.empty()) continue;
    out.otherwise.clear();
    out.told.clear();
    out.next.reset();
    out.consents.clear();
    return out;
  }
  return last_visit(groomed);
}
}  // namespace furnish
