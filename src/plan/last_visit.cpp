#include "plan/last_visit.h"

#include <algorithm>
#include <tuple>

namespace furnish {

std::optional<LastVisit> last_visit(std::span<const Visit* const> history) {
  if (history.empty()) return std::nullopt;
  const Visit& visit = *history.back();
  LastVisit out;
  out.date = visit.date.value;
  out.number = visit.number;
  out.groomer = visit.groomer;
  out.not_done = visit.not_done.value;
  for (const RegionState& state : visit.came_in.regions) {
    const int grade = state.mats.value_or(0);
    if (grade > 0 || state.encircling) out.mats.push_back({state.place, grade, state.encircling});
  }
  std::ranges::stable_sort(out.mats, {}, [](const MattedPlace& one) {
    return std::tuple(!one.encircling, -one.grade, one.place);
  });
  out.behaviour = visit.came_in.behaviour.value;
  out.helped = visit.came_in.helped.value;
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
