#include "plan/plan_json.h"

#include <array>
#include <nlohmann/json.hpp>

#include "base/quantity.h"
#include "base/text.h"
#include "plan/day_checks.h"
#include "plan/restraints.h"

namespace furnish {
namespace {
using Json = nlohmann::ordered_json;

/// As it is written in files: "front-legs", "left front leg".
std::string word(Place place) {
  if (place.side == Side::both) return std::string(key(place.region));
  return std::string(to_text(place.side)) + " " + std::string(info(place.region).one);
}

template <std::size_t n, typename Enum>
std::string name_of(const std::array<std::string_view, n>& names, Enum value) {
  return std::string(names[static_cast<std::size_t>(value)]);
}
constexpr std::array<std::string_view, 5> basis_names{"blade", "comb", "stated", "natural",
                                                      "unknown"};
constexpr std::array<std::string_view, 9> posture_names{
    "standing", "facing",    "from-behind", "foot-lifted",   "forelegs-lifted",
    "foot-low", "feet-down", "lying",       "lying-foot-low"};
constexpr std::array<std::string_view, 3> slot_names{"shampoo", "conditioner", "other"};
constexpr std::array<std::string_view, 2> rate_names{"published", "measured"};
constexpr std::array<std::string_view, 7> reason_names{
    "booked", "agreed", "no-visit", "owner-interval", "coat-interval", "keep-under", "mat-prone"};
constexpr std::array<std::string_view, 2> limit_names{"keep-under", "mat-prone"};
constexpr std::array<std::string_view, 4> status_names{"valid", "not-yet", "expired", "missing"};
constexpr std::array<std::string_view, 4> age_names{"unknown", "puppy", "adult", "senior"};

Json json(const Place& place) {
  return word(place);
}
Json json(const std::vector<Place>& places) {
  Json out = Json::array();
  for (const Place place : places) out.push_back(word(place));
  return out;
}
Json json(Length length) {
  return length.in_mm();
}
Json json(LengthRange range) {
  return {{"low", json(range.low)}, {"high", json(range.high)}};
}
Json json(Date date) {
  return to_iso(date);
}
Json json(Volume volume) {
  return volume.in_ml();
}
Json json(const Tool& tool) {
  return to_text(tool, Units::us);
}
Json json(const Parts& parts) {
  return {
      {"total", json(parts.total)}, {"product", json(parts.product)}, {"water", json(parts.water)}};
}
Json json(std::chrono::seconds time) {
  return static_cast<double>(time.count()) / 60;
}
Json json(std::chrono::days days) {
  return days.count();
}
Json json(int number) {
  return number;
}
Json json(double number) {
  return number;
}
// Seen by the template below, which finds what stands before it.
Json json(const NextVisit&);
Json json(const Duration&);
Json json(const Weighing&);
Json json(const WeightChange&);
Json json(const Acceptance&);
Json json(const LastVisit&);
template <typename T>
Json json(const std::optional<T>& value) {
  return value ? json(*value) : Json(nullptr);
}

Json json(const PartLength& row) {
  return {{"place", json(row.place)},
          {"basis", name_of(basis_names, row.basis)},
          {"left", json(row.left)},
          {"lay", std::string(to_text(row.lay))},
          {"substitute", row.substitute}};
}
Json json(const Target& one) {
  return {{"place", json(one.place)},
          {"median", json(one.median)},
          {"newest", json(one.newest)},
          {"visits", one.visits}};
}
Json json(const DrawerGap& gap) {
  return {{"place", json(gap.place)},
          {"wanted", json(gap.wanted)},
          {"use", json(gap.use)},
          {"difference", json(gap.difference)}};
}
Json json(const Blend& blend) {
  Json steps = Json::array();
  for (const Tool& tool : blend.steps) steps.push_back(json(tool));
  return {{"longer", json(blend.longer)},
          {"shorter", json(blend.shorter)},
          {"from", json(blend.from)},
          {"to", json(blend.to)},
          {"steps", steps},
          {"shears", blend.with ? Json(std::string(to_text(*blend.with))) : Json(nullptr)}};
}
/// The rules that forbid or limit something there; what they say is under "cautions".
Json restraints_json(std::span<const Caution> cautions, const WorkStep& step) {
  Json out = Json::array();
  for (const Matter& matter : restraints(cautions, step)) {
    for (const Caution& one : matter.cautions) out.push_back(std::string(rule(one.rule).key));
  }
  return out;
}
Json json(const WorkStep& step, const PlanWords& words, std::span<const Caution> cautions) {
  Json how = Json::array();
  for (const Method method : step.how) how.push_back(words.how(method));
  return {{"stage", std::string(to_text(step.stage))},
          {"task", std::string(to_text(step.task))},
          {"tool", json(step.tool)},
          {"substitute", step.substitute},
          {"places", json(step.places)},
          {"position", name_of(posture_names, posture(step))},
          {"words", step.words},
          {"how", how},
          {"minutes", json(step.time)},
          {"before_bath", step.before_bath},
          {"restrained_by", restraints_json(cautions, step)}};
}
Json json(const Mix& mix) {
  return {{"product", mix.use.product.name},
          {"as", name_of(slot_names, mix.slot)},
          {"exact", json(mix.exact)},
          {"measured", json(mix.measured)},
          {"neat", mix.neat},
          {"coarse", mix.coarse},
          {"needed", json(mix.needed)},
          {"bottles", json(mix.bottles)},
          {"for_dog", json(mix.for_dog)},
          {"dwell_minutes", json(mix.dwell)},
          {"age_days", json(mix.age)}};
}
Json json(const BathPlan& bath) {
  Json mixes = Json::array();
  for (const Mix& mix : bath.mixes) mixes.push_back(json(mix));
  return {{"none", bath.none},
          {"bottle", json(bath.bottle)},
          {"surface_m2", json(bath.surface_m2)},
          {"mixes", mixes},
          {"rinse_minutes", json(bath.rinse)}};
}
Json json(const RegionGrowth& row) {
  return {{"place", json(row.place)},
          {"since", json(row.since)},
          {"left", json(row.left)},
          {"left_measured", row.left_measured},
          {"mm_per_day", {{"low", row.rate.low / 1000}, {"high", row.rate.high / 1000}}},
          {"basis", name_of(rate_names, row.rate.basis)},
          {"measurements", row.rate.measurements},
          {"visits", row.rate.visits},
          {"natural", json(row.natural)},
          {"today", json(row.today)}};
}
Json json(const NextVisit& next) {
  return {
      {"date", json(next.date)},
      {"wanted", json(next.wanted)},
      {"reason", name_of(reason_names, next.reason)},
      {"at", next.at ? Json(clock_time(*next.at)) : Json(nullptr)},
      {"then", next.then ? Json{{"date", json(next.then->date)}, {"at", clock_time(next.then->at)}}
                         : Json(nullptr)},
      {"last", json(next.last)},
      {"place", json(next.place)},
      {"limit", json(next.limit)},
      {"overdue_days", next.overdue_days},
      {"all_visits_read", next.all_visits}};
}
Json json(const LengthLimit& one) {
  return {{"kind", name_of(limit_names, one.kind)},
          {"place", json(one.place)},
          {"limit", json(one.limit)},
          {"passed", json(one.passed)}};
}
Json json(const Duration& time) {
  return {{"expected", time.expected.count()},
          {"low", time.low.count()},
          {"high", time.high.count()},
          {"visits", time.visits}};
}
Json json(const Weighing& weighing) {
  return {{"kg", weighing.weight.in_kg()}, {"on", json(weighing.on)}};
}
Json json(const WeightChange& change) {
  return {{"before", json(change.before)},
          {"percent", change.percent},
          {"over_5_percent_lost", change.mark},
          {"over_10_percent_lost", change.loss}};
}
Json json(const Health& health) {
  Json vaccinations = Json::array();
  for (const VaccinationState& one : health.vaccinations) {
    vaccinations.push_back({{"name", one.name},
                            {"status", name_of(status_names, one.status)},
                            {"given", json(one.given)},
                            {"from", json(one.from)},
                            {"until", json(one.until)},
                            {"required", one.required}});
  }
  return {{"weight", json(health.weight)},
          {"since_last", json(health.since_last)},
          {"since_highest_of_year", json(health.since_highest)},
          {"vaccinations", vaccinations},
          {"age", name_of(age_names, health.age_group)},
          {"years", json(health.years)},
          {"months", json(health.months)},
          {"age_is_about", health.about}};
}
Json json(const OpenFinding& one) {
  Json seen = Json::array();
  for (const Date day : one.seen) seen.push_back(json(day));
  return {{"place", json(one.place)},
          {"what", one.what.value},
          {"advised", one.advised.value},
          {"for", one.audience == Audience::everyone ? "everyone" : "staff"},
          {"seen", seen}};
}
Json json(const LastVisit& last) {
  Json mats = Json::array(), otherwise = Json::array(), consents = Json::array();
  for (const MattedPlace& one : last.mats) {
    mats.push_back(
        {{"place", json(one.place)}, {"grade", one.grade}, {"encircling", one.encircling}});
  }
  for (const PlacedEntry& one : last.otherwise) {
    otherwise.push_back({{"place", json(one.place)},
                         {"tool", json(one.entry.tool)},
                         {"leave", json(one.entry.leave)},
                         {"why", one.entry.why.value}});
  }
  for (const Consent& one : last.consents) {
    consents.push_back({{"to", one.to.value}, {"by", one.by}, {"on", json(one.on)}});
  }
  return {{"date", json(last.date)},
          {"number", last.number},
          {"groomer", last.groomer},
          {"mats", mats},
          {"behaviour", last.behaviour.value},
          {"helped", last.helped.value},
          {"otherwise", otherwise},
          {"kg", last.weight ? Json(last.weight->in_kg()) : Json(nullptr)},
          {"told", last.told},
          {"next", json(last.next)},
          {"consents", consents},
          {"photos", {{"before", last.photos_before}, {"after", last.photos_after}}}};
}
Json json(const Acceptance& one) {
  return {{"rule", std::string(rule(one.rule.value).key)},
          {"reason", one.reason},
          {"signed", json(one.signed_on)}};
}
Json json(const Caution& one, const PlanWords& words) {
  return {{"rule", std::string(rule(one.rule).key)},
          {"signal", std::string(to_text(one.signal))},
          {"what", what_text(one, words)},
          {"instead", words.caution(one.instead)},
          {"places", json(one.places)},
          {"source", std::string(rule(one.rule).source)},
          {"accepted", json(one.accepted)}};
}

template <typename T, typename... Words>
Json list(const std::vector<T>& rows, const Words&... words) {
  Json out = Json::array();
  for (const T& row : rows) out.push_back(json(row, words...));
  return out;
}
}  // namespace

std::string plan_json(const Plan& plan, const Pet& pet, const PlanWords& words) {
  std::vector<Target> targets, once;
  for (const Target& one : plan.targets) (one.is_target() ? targets : once).push_back(one);
  const Json out = {
      {"furnish_plan", plan_json_version},
      {"pet", {{"key", pet.key}, {"name", pet.name.value}}},
      {"on", json(plan.today)},
      {"lengths", list(plan.lengths)},
      {"targets", list(targets)},
      {"left_once", list(once)},
      {"drawer", list(plan.drawer)},
      {"blends", list(plan.blends)},
      {"order", list(plan.order, words, plan.cautions)},
      {"bath", json(plan.bath)},
      {"drying",
       {{"words", plan.drying.words},
        {"ruled_out", plan.drying.ruled_out ? Json(plan.drying.planned) : Json(nullptr)}}},
      {"tearing_skin", plan.tearing_skin},
      {"growth", list(plan.growth)},
      {"next_visit", json(plan.next_visit)},
      {"unless_booked", json(plan.unless_booked)},
      {"bookings_unread_from", json(plan.unread_day)},
      {"salon_unread", plan.salon_unread},
      {"limits", list(plan.limits)},
      {"comes_every", plan.kept
                          ? Json{{"days", plan.kept->median.count()}, {"visits", plan.kept->visits}}
                          : Json(nullptr)},
      {"minutes", json(plan.duration)},
      {"last_visit", json(plan.last_visit)},
      {"not_done", plan.not_done
                       ? Json{{"date", json(plan.not_done->date)}, {"why", plan.not_done->why}}
                       : Json(nullptr)},
      {"findings", list(plan.findings)},
      {"health", json(plan.health)},
      {"cautions", list(plan.cautions, words)},
      {"standing", list(plan.standing, words)},
      {"stale_acceptances", list(plan.stale)}};
  return visible_json(out.dump(2, ' ', false, Json::error_handler_t::replace)) + "\n";
}
}  // namespace furnish
