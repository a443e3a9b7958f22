#include "plan/plan.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

#include "plan/history.h"
#include "plan/input_checks.h"
#include "plan/places.h"
#include "plan/salon_unread.h"
#include "plan/tool_rules.h"

namespace furnish {
namespace {
/// The pet's own word counts over the salon's.
bool clips_felt_first(const Salon& salon, const Pet& pet) {
  return !pet.bath.when && salon.felted == FeltedWay::clip_first;
}

/// The last that saw how the coat is: the last that was done, or one after it that was not and
/// looked. Null if there is none.
const Visit* last_look(std::span<const Visit* const> seen) {
  for (std::size_t n = seen.size(); n > 0; --n) {
    const Visit* const visit = seen[n - 1];
    if (visit->work == Work::done || !visit->came_in.regions.empty()) return visit;
  }
  return nullptr;
}

/// A visit that goes as planned and of which nothing is measured.
Visit as_planned(Date day) {
  Visit out;
  out.date = {day, {}};
  return out;
}

/// Empty if the pet is not booked for the plan's day, or its visit of that day is on file.
std::optional<AfterToday> after_today(const Salon& salon, const Pet& pet, const Plan& plan,
                                      std::vector<const Visit*> past, const PetBookings& bookings) {
  const auto& next = plan.next_visit;
  if (!next || next->reason != DueReason::booked || next->date != plan.today) return std::nullopt;
  const Visit visit = as_planned(plan.today);
  past.push_back(&visit);
  DiagnosticSink unheard;  // the plan before the visit has said it already
  AfterToday out;
  out.growth = growth(salon, pet, plan.lengths, past, plan.today, unheard);
  out.limits = length_limits(salon, pet, out.growth, unheard);
  const auto then = next_visit(salon, pet, out.limits, past, bookings, plan.today, unheard);
  if (then && then->sure && then->reason != DueReason::booked) out.next = then->date;
  return out;
}
}  // namespace

Plan make_plan(const Salon& salon, const Pet& given, std::span<const Visit> visits,
               const PetBookings& bookings, Date today, DiagnosticSink& sink) {
  Pet pet = given;
  std::ranges::stable_sort(pet.trim, {}, &TrimPart::place);
  const std::vector<const Visit*> past = history(pet, visits, today, sink);
  // A visit that is under way has shown how the coat is today, and not what is done to it.
  const std::vector<const Visit*> seen = seen_by(pet, visits, today);
  const Visit* const latest = last_look(seen);

  Plan plan;
  plan.today = today;
  plan.salon_unread = salon_unread(salon, pet);
  plan.health = health(salon, pet, seen, today, sink);
  const auto weight = plan.health.weight ? std::optional(plan.health.weight->weight) : std::nullopt;
  plan.drawer = drawer_gaps(salon, pet, latest);
  plan.bath = bath_plan(salon, pet, weight, today);
  const std::vector<Place> felted =
      clips_felt_first(salon, pet) ? felted_places(latest) : std::vector<Place>();
  plan.drying = drying(pet, ruled_out(pet));
  plan.order = order_of_work(pet, plan.bath, plan.drying.words, plan.drawer, felted);
  plan.findings = open_findings(seen);
  // The rules ask about the tools that the trim names, so about the lengths of those.
  const std::vector<PartLength> wished = lengths_wished(salon, pet);
  plan.cautions = cautions(
      {salon, pet, latest, today, wished, plan.order, plan.health, plan.drying, plan.findings});
  plan.lengths = lengths_left(salon, pet, plan.drawer, plan.cautions);
  plan.targets = targets(pet, past);
  plan.blends = blends(salon, pet, plan.lengths, latest);
  plan.tearing_skin = tearing_skin(pet);
  plan.growth = growth(salon, pet, plan.lengths, past, today, sink);
  plan.limits = length_limits(salon, pet, plan.growth, sink);
  const Visit* const put_off = sent_home(seen);
  plan.next_visit = next_visit(salon, pet, plan.limits, past, bookings, today, sink, put_off);
  if (put_off != nullptr) plan.not_done = NotDone{put_off->date.value, put_off->not_done.value};
  plan.unread_day = plan.next_visit ? plan.next_visit->unread : first_unread(bookings, today);
  if (plan.next_visit && !plan.next_visit->sure) {
    plan.unless_booked = std::exchange(plan.next_visit, std::nullopt);
  }
  plan.after_today = after_today(salon, pet, plan, past, bookings);
  plan.last_visit = last_visit(past);
  plan.visit_before = visit_before(past, seen, today);
  plan.mats_left = mats_left(pet, seen);
  plan.kept = kept_interval(past);
  plan.duration = duration(salon, pet, weight, past);
  plan.stale = stale_acceptances(pet, plan.cautions);
  const auto always = std::ranges::stable_partition(
      plan.cautions, [](const Caution& one) { return !is_standing(rule(one.rule)); });
  std::ranges::move(always, std::back_inserter(plan.standing));
  plan.cautions.erase(always.begin(), always.end());

  check_input(salon, pet, plan.bath, plan.drawer, plan.lengths, today, sink);
  for (const Acceptance& one : plan.stale) {
    sink.warning("stale-acceptance", one.span,
                 fmt::format("'{}' is accepted, but no longer applies", rule(one.rule.value).key))
        .hint = "take it out, or look whether the plan is still what was meant";
  }
  return plan;
}

Plan plan_after_today(const Salon& salon, const Pet& pet, std::span<const Visit> visits,
                      const PetBookings& bookings, Date today, DiagnosticSink& sink) {
  const auto of_today = [&](const Visit& visit) {
    return visit.date.value == today && !is_open(visit);
  };
  if (std::ranges::any_of(visits, of_today))
    return make_plan(salon, pet, visits, bookings, today, sink);
  std::vector<Visit> all(visits.begin(), visits.end());
  all.push_back(as_planned(today));
  return make_plan(salon, pet, all, bookings, today, sink);
}

void lacks_visits(Plan& plan) {
  if (plan.next_visit) plan.next_visit->all_visits = false;
  if (plan.unless_booked) plan.unless_booked->all_visits = false;
  if (plan.next_visit && plan.next_visit->reason != DueReason::booked) {
    plan.unless_booked = std::exchange(plan.next_visit, std::nullopt);
  }
}
}  // namespace furnish
