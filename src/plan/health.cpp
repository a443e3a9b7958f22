#include "plan/health.h"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

#include "base/diagnostic.h"
#include "base/quantity.h"
#include "base/text.h"
#include "trade/health.h"

namespace furnish {
namespace {
/// A change this large in one step is a slip rather than a dog: a decimal point, or ten for one.
constexpr std::int64_t slip_factor = 5;
/// Pounds written for kilograms, or the other way: 2.2046, give or take a tenth.
constexpr double pounds_low = 2.0, pounds_high = 2.43;

/// Every weighing with a day on or before today, oldest first.
std::vector<Weighing> dated(const Pet& pet, std::span<const Visit* const> history, Date today) {
  std::vector<Weighing> out;
  for (const Visit* const visit : history) {
    if (visit->weight)
      out.push_back({visit->weight->value, visit->date.value, visit->weight->span});
  }
  if (pet.weight && pet.weighed && pet.weighed->value <= today) {
    out.push_back({pet.weight->value, pet.weighed->value, pet.weight->span});
  }
  std::ranges::stable_sort(out, {}, [](const Weighing& w) { return std::tuple(*w.on, w.weight); });
  return out;
}

Date a_year_before(Date day) {
  const std::chrono::year_month_day ymd(day);
  const auto back = ymd - std::chrono::years(1);
  // 29 February has no counterpart: the last day of that month.
  return back.ok() ? Date(back) : Date(back.year() / back.month() / std::chrono::last);
}

WeightChange change(const Weighing& before, Mass now) {
  const std::int64_t lost = before.weight.ug() - now.ug();
  const double percent =
      -100.0 * static_cast<double>(lost) / static_cast<double>(before.weight.ug());
  return {before, percent, lost * 100 > weight_change_percent * before.weight.ug(),
          lost * 100 > weight_loss_percent * before.weight.ug()};
}

void report_slip(const Weighing& a, const Weighing& b, DiagnosticSink& sink) {
  const auto [low, high] = std::minmax(a.weight, b.weight);
  const double ratio = static_cast<double>(high.ug()) / static_cast<double>(low.ug());
  const bool pounds = ratio >= pounds_low && ratio <= pounds_high;
  if (!pounds && high.ug() < slip_factor * low.ug()) return;
  auto& fault =
      sink.warning("weight-jump", b.span,
                   fmt::format("{} after {} is {:.1f} times as {}",
                               to_text(b.weight, Units::metric), to_text(a.weight, Units::metric),
                               ratio, b.weight > a.weight ? "much" : "little"));
  fault.hint =
      pounds ? "pounds written as kg, or kg as pounds?" : "a decimal point in the wrong place?";
  fault.notes.emplace_back(a.span, "weighed before");
}

/// A puppy may well weigh twice or five times what it did.
bool grew_up(const Pet& pet, const Weighing& before, const Weighing& after) {
  return pet.born && full_months(last_day(*pet.born), *before.on) < 12 &&
         after.weight > before.weight;
}
}  // namespace

const WeightChange* weight_lost(const Health& health) {
  for (const auto* change : {&health.since_last, &health.since_highest}) {
    if (*change && (*change)->loss) return &**change;
  }
  return nullptr;
}

std::optional<Weighing> newest_weight(const Pet& pet, std::span<const Visit* const> history,
                                      Date today) {
  const std::vector<Weighing> all = dated(pet, history, today);
  if (!all.empty()) return all.back();
  if (pet.weight && !pet.weighed) return Weighing{pet.weight->value, {}, pet.weight->span};
  return std::nullopt;
}

AgeGroup age_group(Date born, std::optional<Mass> weight, Date today) {
  if (today < born) return AgeGroup::unknown;
  if (full_months(born, today) < puppy_months) return AgeGroup::puppy;
  const int limit = weight && *weight >= giant ? senior_years_giant : senior_years;
  // The day before, for the birthday itself is not yet over the limit.
  return full_years(born, today - std::chrono::days(1)) >= limit ? AgeGroup::senior
                                                                 : AgeGroup::adult;
}

AgeGroup age_group(const Birth& born, std::optional<Mass> weight, Date today) {
  if (age_group(born.value, weight, today) == AgeGroup::senior) return AgeGroup::senior;
  return age_group(std::max(std::min(last_day(born), today), born.value), weight, today);
}

VaccinationState vaccination_state(const VaccinationRule& rule, std::span<const Vaccination> given,
                                   Date today) {
  VaccinationState out{rule.name, VaccinationStatus::missing, {}, {}, {}, rule.required, rule.span};
  for (const Vaccination& one : given) {
    if (lower_ascii(one.name) != lower_ascii(rule.name) || one.given.value > today) continue;
    if (out.given && *out.given > one.given.value) continue;
    const Date from = one.booster ? one.given.value : after(one.given.value, rule.wait);
    // A dose of the same day that counts sooner stands.
    if (out.given == one.given.value && *out.from <= from) continue;
    out.given = one.given.value;
    out.from = from;
    out.until = after(one.given.value, rule.valid);
    out.span = one.given.span;
  }
  if (!out.given) return out;
  out.status = today > *out.until  ? VaccinationStatus::expired
               : today < *out.from ? VaccinationStatus::not_yet
                                   : VaccinationStatus::valid;
  return out;
}

Health health(const Salon& salon, const Pet& pet, std::span<const Visit* const> history, Date today,
              DiagnosticSink& sink) {
  Health out;
  out.weight = newest_weight(pet, history, today);
  const std::vector<Weighing> all = dated(pet, history, today);
  for (std::size_t i = 1; i < all.size(); ++i) {
    if (!grew_up(pet, all[i - 1], all[i])) report_slip(all[i - 1], all[i], sink);
  }
  // A weight without its day is some earlier one: enough to see a slip of the first visit by.
  if (!all.empty() && pet.weight && !pet.weighed) {
    const bool young = pet.born && full_months(last_day(*pet.born), *all.front().on) < 18;
    if (!young) report_slip({pet.weight->value, {}, pet.weight->span}, all.front(), sink);
  }
  if (!all.empty()) {
    const Weighing& now = all.back();
    const Date year_ago = a_year_before(*now.on);
    const Weighing *last = nullptr, *highest = nullptr;
    for (const Weighing& one : all) {
      if (*one.on >= *now.on) break;
      last = &one;
      if (*one.on < year_ago) continue;
      if (highest == nullptr || one.weight >= highest->weight) highest = &one;
    }
    if (last != nullptr) out.since_last = change(*last, now.weight);
    // Nor may a loss go unsaid for want of a day.
    if (last == nullptr && pet.weight && !pet.weighed) {
      out.since_last = change({pet.weight->value, {}, pet.weight->span}, now.weight);
    }
    if (highest != nullptr) out.since_highest = change(*highest, now.weight);
  }
  for (const VaccinationRule& rule : salon.vaccinations) {
    out.vaccinations.push_back(vaccination_state(rule, pet.vaccinations, today));
  }
  std::ranges::stable_sort(out.vaccinations, {}, &VaccinationState::name);
  if (pet.born && pet.born->value <= today) {
    const Date likely = likely_day(*pet.born, today);
    out.age_group =
        age_group(*pet.born, out.weight ? std::optional(out.weight->weight) : std::nullopt, today);
    out.years = full_years(likely, today);
    out.months = full_months(likely, today);
    out.about = pet.born->about();
  }
  return out;
}
}  // namespace furnish
