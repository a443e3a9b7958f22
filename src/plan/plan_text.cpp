#include "plan/plan_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <span>
#include <utility>
#include <vector>

#include "base/quantity.h"
#include "base/text.h"
#include "plan/day_checks.h"
#include "plan/open_rows.h"
#include "plan/restraints.h"

namespace furnish {
namespace {
using Row = std::vector<std::string>;

/// Two spaces, then columns as wide as their widest cell; the last is not padded.
void add_table(std::string& out, const std::string& title, const std::vector<Row>& rows) {
  if (rows.empty()) return;
  out += "\n" + title + "\n";
  std::vector<std::size_t> widths;
  for (const Row& row : rows) {
    widths.resize(std::max(widths.size(), row.size()));
    for (std::size_t i = 0; i < row.size(); ++i) {
      widths[i] = std::max(widths[i], code_points(row[i]));
    }
  }
  for (const Row& row : rows) {
    std::string line = " ";
    for (std::size_t i = 0; i < row.size(); ++i) {
      line += " " + row[i];
      if (i + 1 < row.size()) line += std::string(widths[i] - code_points(row[i]) + 1, ' ');
    }
    while (line.ends_with(' ')) line.pop_back();
    out += line + "\n";
  }
}

std::string list_of(const std::vector<Place>& places) {
  std::vector<std::string> names;
  for (const Place place : places) names.push_back(to_text(place));
  return joined(names, ", ");
}

std::string tool_words(const TrimEntry& entry, Units units) {
  std::string out = to_text(entry.tool, units);
  const bool clipper =
      std::holds_alternative<Clip>(entry.tool) || std::holds_alternative<CombOver>(entry.tool);
  if (clipper && entry.lay != Lay::with) out += fmt::format(" {} the lay", to_text(entry.lay));
  return out;
}

/// More or less, with its sign.
std::string signed_text(const DrawerGap& gap, Units units) {
  const Length difference = gap.difference.value_or(Length());
  if (difference == Length() && gap.apart_at_most != Length()) {
    const bool more = gap.apart_at_most > Length();
    return fmt::format("up to {} {}", to_text(more ? gap.apart_at_most : -gap.apart_at_most, units),
                       more ? "longer" : "shorter");
  }
  if (difference == Length()) return "the same length";
  const bool more = difference > Length();
  return to_text(more ? difference : -difference, units) + (more ? " longer" : " shorter");
}

std::vector<Row> caution_rows(std::span<const Caution> cautions, const PlanWords& words) {
  std::vector<Row> rows;
  for (const Caution& one : cautions) {
    std::string text = what_text(one, words) + "; " + words.caution(one.instead);
    if (one.accepted) {
      text +=
          fmt::format(" [accepted {}: {}]", to_iso(one.accepted->signed_on), one.accepted->reason);
    }
    rows.push_back({std::string(to_text(one.signal)), std::string(rule(one.rule).key), text});
  }
  return rows;
}

std::vector<Row> stale_rows(const Plan& plan) {
  std::vector<Row> rows;
  for (const Acceptance& one : plan.stale) {
    rows.push_back({std::string(rule(one.rule.value).key),
                    fmt::format("accepted {}, but does not apply", to_iso(one.signed_on))});
  }
  return rows;
}

/// Rows that say the same of other places are one.
void add_row(std::vector<Row>& rows, std::vector<std::vector<Place>>& places, Place place,
             Row row) {
  const auto same = std::ranges::find(rows, row);
  if (same == rows.end()) {
    rows.push_back(std::move(row));
    places.push_back({place});
  } else {
    places[static_cast<std::size_t>(same - rows.begin())].push_back(place);
  }
}

void append_places(std::vector<Row>& rows, const std::vector<std::vector<Place>>& places) {
  for (std::size_t i = 0; i < rows.size(); ++i) rows[i].push_back(list_of(places[i]));
}

std::string target_words(const Target* target, Units units) {
  if (target == nullptr) return {};
  const std::string left = to_text(target->median, units), day = to_iso(target->newest);
  if (!target->is_target()) return fmt::format("left at {} on {}", left, day);
  return fmt::format("left at {}, median of {} visits to {}", left, target->visits, day);
}

std::vector<Row> length_rows(const Plan& plan, const Pet& pet, Units units) {
  const auto worked = [&](const TrimPart& part) {
    return tool_words(taken(part, plan.cautions), units);
  };
  std::vector<Row> rows;
  std::vector<std::vector<Place>> places;
  for (const PartLength& row : plan.lengths) {
    const TrimPart* const part = find_part(pet.trim, row.place);
    std::string left = row.left ? to_text(*row.left, units) : "not stated";
    if (row.basis == LengthBasis::natural) left += ", natural";
    if (row.substitute) left += ", by the substitute";
    add_row(rows, places, row.place,
            {std::move(left), part != nullptr ? worked(*part) : "",
             target_words(find_target(plan.targets, row.place), units)});
  }
  append_places(rows, places);
  return rows;
}

std::vector<Row> drawer_rows(const Plan& plan, Units units) {
  std::vector<Row> rows;
  for (const DrawerGap& gap : plan.drawer) {
    const std::string instead =
        gap.use ? fmt::format("use {}, {}", to_text(*gap.use, units), signed_text(gap, units))
                : fmt::format("nothing within {}", to_text(substitute_within, units));
    rows.push_back({to_text(gap.place), "no " + to_text(gap.wanted, units), instead});
  }
  return rows;
}

std::vector<Row> blend_rows(const Plan& plan, Units units) {
  std::vector<Row> rows;
  for (const Blend& blend : plan.blends) {
    std::vector<std::string> how;
    for (const Tool& tool : blend.steps) how.push_back(to_text(tool, units));
    if (blend.with) how.push_back(fmt::format("{} shears", to_text(*blend.with)));
    rows.push_back({fmt::format("{} into {}", to_text(blend.longer), to_text(blend.shorter)),
                    fmt::format("{} to {}", to_text(blend.to, units), to_text(blend.from, units)),
                    how.empty() ? "by hand" : joined(how, ", ")});
  }
  return rows;
}

std::string_view posture_words(Posture held) {
  switch (held) {
    case Posture::standing:
      return "standing";
    case Posture::facing:
      return "facing you";
    case Posture::from_behind:
      return "from behind";
    case Posture::foot_lifted:
      return "foot lifted";
    case Posture::forelegs_lifted:
      return "forelegs lifted";
    case Posture::foot_low:
      return "foot held low";
    case Posture::feet_down:
      return "all feet down";
    case Posture::lying:
      return "lying";
    case Posture::lying_foot_low:
      break;
  }
  return "lying, foot low";
}

std::vector<Row> order_rows(const Plan& plan, Units units) {
  std::vector<Row> rows;
  std::string shown;
  for (const WorkStep& step : plan.order) {
    const std::string stage(to_text(step.stage));
    std::string what = step.tool && step.task == Task::cut ? to_text(*step.tool, units)
                                                           : std::string(to_text(step.task));
    if (step.substitute) what += " (instead)";
    if (!step.places.empty()) what += ": " + list_of(step.places);
    if (!step.words.empty()) what += fmt::format(" ({})", step.words);
    if (step.time) what += ", " + to_text(*step.time);
    for (const Matter& matter : restraints(plan.cautions, step)) {
      const Caution& gravest = matter.cautions.front();
      what += fmt::format(" [{}: {}]", to_text(gravest.signal), rule(gravest.rule).key);
    }
    rows.push_back({stage == shown ? "" : stage, std::string(posture_words(posture(step))), what});
    shown = stage;
  }
  return rows;
}

std::vector<Row> bath_rows(const BathPlan& bath, Units units) {
  if (bath.none) return {{"none"}};
  std::vector<Row> rows;
  for (const Mix& mix : bath.mixes) {
    std::string volumes = "dilution not stated";
    if (mix.neat) {
      volumes = "undiluted";
    } else if (mix.measured) {
      volumes = fmt::format("{} product + {} water", to_text(mix.measured->product, units),
                            to_text(mix.measured->water, units));
      if (mix.coarse) volumes += fmt::format(" (exactly {:.1f} ml)", mix.exact->product.in_ml());
    }
    std::string amount;
    if (mix.bottles) {
      amount = fmt::format("{} of {}",
                           *mix.bottles == 1 ? "1 bottle" : fmt::format("{} bottles", *mix.bottles),
                           to_text(bath.bottle, units));
    }
    rows.push_back({mix.use.product.name, volumes, amount,
                    mix.dwell ? "leave on " + to_text(*mix.dwell) : ""});
  }
  if (bath.rinse) rows.push_back({"rinse", "at least " + to_text(*bath.rinse)});
  return rows;
}

std::vector<Row> growth_rows(const Plan& plan, Units units) {
  std::vector<Row> rows;
  std::vector<std::vector<Place>> places;
  const Date due = plan.next_visit ? plan.next_visit->date : plan.today;
  for (const RegionGrowth& row : plan.growth) {
    const Rate& rate = row.rate;
    const std::string basis =
        rate.basis == RateBasis::measured
            ? fmt::format("{} own measurements, {} visits", rate.measurements, rate.visits)
            : "published range";
    add_row(rows, places, row.place,
            {to_text(row.today, units) + " today",
             to_text(length_on(row, due), units) + " on " + to_iso(due),
             fmt::format("{:.2f}–{:.2f} mm a day, {}", rate.low / 1000, rate.high / 1000, basis)});
  }
  append_places(rows, places);
  return rows;
}

std::string due_text(const NextVisit& next, Units units) {
  if (!next.all_visits && !next.at) return "not known: not all visits can be read";
  // The day that is asked about is no date of theirs.
  if (next.reason == DueReason::no_visit) return "not booked; no groom on file";
  std::string out = to_iso(next.date);
  switch (next.reason) {
    case DueReason::booked:
      out += ", booked at " + clock_time(*next.at);
      if (next.then) {
        out += fmt::format("; then {} at {}", to_iso(next.then->date), clock_time(next.then->at));
      }
      break;
    case DueReason::no_visit:
      break;
    case DueReason::agreed:
      out += ", as agreed";
      break;
    case DueReason::owner_interval:
      out += ", the owner's interval";
      break;
    case DueReason::coat_interval:
      out += ", usual for the coat";
      break;
    case DueReason::keep_under:
    case DueReason::mat_prone:
      out += fmt::format(", before the {} {} {}", to_text(*next.place),
                         next.reason == DueReason::keep_under ? "pass" : "mat over",
                         to_text(*next.limit, units));
  }
  if (next.date != next.wanted) out += fmt::format(" (closed on {})", to_iso(next.wanted));
  if (next.overdue_days > 0) {
    out +=
        fmt::format("; {} {} overdue", next.overdue_days, next.overdue_days == 1 ? "day" : "days");
  }
  return out;
}

/// Limits that are passed before the pet comes again; rows of one limit and day are one.
std::vector<Row> limit_rows(const Plan& plan, Units units) {
  std::vector<Row> rows;
  std::vector<std::vector<Place>> places;
  for (const LengthLimit& one : plan.limits) {
    if (plan.next_visit && one.passed > plan.next_visit->date) continue;
    const bool owners = one.kind == LimitKind::keep_under;
    add_row(rows, places, one.place,
            {fmt::format("{} {}", owners ? "over the owner's" : "mats quickly over",
                         to_text(one.limit, units)),
             "from " + to_iso(one.passed)});
  }
  append_places(rows, places);
  return rows;
}

std::string change_text(const WeightChange& change, std::string_view than) {
  return fmt::format("{:+.1f} % {}{}", change.percent, than,
                     change.before.on ? " of " + to_iso(*change.before.on) : "");
}

std::string_view status_words(VaccinationStatus status) {
  switch (status) {
    case VaccinationStatus::valid:
      return "valid until";
    case VaccinationStatus::not_yet:
      return "counts from";
    case VaccinationStatus::expired:
      return "expired after";
    case VaccinationStatus::missing:
      break;
  }
  return "none on file";
}

std::vector<Row> health_rows(const Health& health, Units units) {
  std::vector<Row> rows;
  if (health.years) {
    const std::string age = *health.years < 1 ? fmt::format("{} months", *health.months)
                                              : fmt::format("{} years", *health.years);
    rows.push_back({"age", (health.about ? "about " : "") + age});
  }
  if (health.weight) {
    std::string words = to_text(health.weight->weight, units);
    if (health.since_last) words += "; " + change_text(*health.since_last, "from the last");
    if (health.since_highest) {
      words += "; " + change_text(*health.since_highest, "from the year's highest");
    }
    rows.push_back({"weight", words});
  }
  for (const VaccinationState& one : health.vaccinations) {
    const auto day = one.status == VaccinationStatus::not_yet ? one.from : one.until;
    rows.push_back(
        {one.name, fmt::format("{}{}{}", status_words(one.status), day ? " " + to_iso(*day) : "",
                               one.required ? "" : " (not required)")});
  }
  return rows;
}

/// A long visit is not known to the minute: over an hour and a half, to half an hour.
std::string work_time(std::chrono::minutes time) {
  if (time <= std::chrono::minutes(90)) return to_text(time);
  const auto halves = (time.count() + 15) / 30;
  return fmt::format("{}{}{}h", halves / 2, halves % 2 == 0 ? "" : "½", narrow_space);
}

std::string duration_text(const Duration& time) {
  return fmt::format("about {} ({} to {}), {}", work_time(time.expected), work_time(time.low),
                     work_time(time.high),
                     time.visits == 0   ? "from weight, coat and trim"
                     : time.visits == 1 ? "from one visit"
                                        : fmt::format("from {} visits", time.visits));
}
}  // namespace

std::string plan_text(const Plan& plan, const Salon& salon, const Pet& pet,
                      const PlanWords& words) {
  const Units units = salon.units;
  std::string out = fmt::format("{}, {}\n", pet.name.value, to_iso(plan.today));
  std::vector<Row> visit;
  if (plan.next_visit) visit.push_back({"next visit", due_text(*plan.next_visit, units)});
  if (plan.unless_booked) visit.push_back({"if not booked", due_text(*plan.unless_booked, units)});
  if (plan.unread_day) {
    visit.push_back({"bookings", fmt::format("not all can be read from {} on, and what is booked "
                                             "then is not known",
                                             to_iso(*plan.unread_day))});
  }
  if (!plan.salon_unread.empty()) {
    visit.push_back({"salon.toml", "has faults under " + joined(plan.salon_unread, ", ") +
                                       "; what stands there is unknown"});
  }
  if (plan.kept) {
    visit.push_back({"comes", fmt::format("every {} days, median of {} visits",
                                          plan.kept->median.count(), plan.kept->visits)});
  }
  if (plan.not_done) {
    visit.push_back(
        {"not done", fmt::format("{}: {}", to_iso(plan.not_done->date), plan.not_done->why)});
  }
  if (plan.duration) visit.push_back({"time", duration_text(*plan.duration)});
  add_table(out, "Visit", visit);
  add_table(out, "Before the next visit", limit_rows(plan, units));
  add_table(out, "Cautions", caution_rows(plan.cautions, words));
  add_table(out, "Accepted in vain", stale_rows(plan));
  add_table(out, "As with every pet", caution_rows(plan.standing, words));
  if (plan.last_visit) add_table(out, "Last time", last_visit_rows(*plan.last_visit, units));
  add_table(out, "Still open", finding_rows(plan.findings));
  add_table(out, "Length left", length_rows(plan, pet, units));
  add_table(out, "Not in the drawer", drawer_rows(plan, units));
  add_table(out, "Blends", blend_rows(plan, units));
  add_table(out, "Order of work", order_rows(plan, units));
  add_table(out, "Bath", bath_rows(plan.bath, units));
  add_table(out, "Growth", growth_rows(plan, units));
  add_table(out, "Health", health_rows(plan.health, units));
  return out;
}
}  // namespace furnish
