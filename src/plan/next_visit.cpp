#include "plan/next_visit.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/diagnostic.h"
#include "base/quantity.h"
#include "plan/closed_days.h"

namespace furnish {
namespace {
constexpr int shortest_for_owner = 7;  ///< days; no limit brings a dog back within the week

struct Due {
  int days = 0;
  DueReason reason = DueReason::owner_interval;
  std::optional<Place> place;
  std::optional<Length> limit;
};

std::optional<Due> usual_interval(const Pet& pet) {
  if (pet.visit_every) {
    return Due{static_cast<int>(pet.visit_every->value.count()), DueReason::owner_interval, {}, {}};
  }
  if (!pet.coat) return std::nullopt;
  const int weeks = (info(*pet.coat).weeks_low + info(*pet.coat).weeks_high) / 2;
  return Due{7 * weeks, DueReason::coat_interval, {}, {}};
}

void take_earlier(std::optional<Due>& due, const Due& other) {
  if (!due || other.days < due->days) due = other;
}

void shorten_for_owner(std::optional<Due>& due, const Pet& pet,
                       std::span<const RegionGrowth> growth, Units units, DiagnosticSink& sink) {
  for (const KeepUnder& keep : pet.preferences.keep_under) {
    for (const RegionGrowth& row : growth) {
      if (!meets(row.place, keep.place)) continue;
      const auto days = days_until_over(row, keep.length);
      if (!days) continue;
      if (*days < 0) {
        sink.warning("keep-under-unreachable", keep.span,
                     fmt::format("the {} may be left at {}, over the {} it is to stay under",
                                 to_text(row.place), to_text(row.left.high, units),
                                 to_text(keep.length, units)))
            .hint = "plan a shorter tool there, or raise the limit";
        continue;
      }
      take_earlier(due, {std::max(*days, shortest_for_owner), DueReason::keep_under, row.place,
                         keep.length});
    }
  }
}

void shorten_for_mats(std::optional<Due>& due, const Pet& pet,
                      std::span<const RegionGrowth> growth) {
  if (!pet.coat || !info(*pet.coat).mats) return;
  const Length limit = *info(*pet.coat).mats;
  for (const RegionGrowth& row : growth) {
    const auto days = days_until_over(row, limit);
    if (!days || *days < 0) continue;  // left longer than that: it is brushed at home
    take_earlier(due, {std::max(*days, 7 * info(*pet.coat).weeks_low), DueReason::mat_prone,
                       row.place, limit});
  }
}

std::optional<Date> agreed(const Salon& salon, const Visit& last, DiagnosticSink& sink) {
  if (!last.next) return std::nullopt;
  if (last.next->value <= last.date.value) {
    sink.warning("next-not-later", last.next->span,
                 fmt::format("the next visit, {}, is not after this one, {}",
                             to_iso(last.next->value), to_iso(last.date.value)))
        .hint = "not counted: the due date is worked out";
    return std::nullopt;
  }
  constexpr std::chrono::days far{104 * 7};  // no interval is longer than that
  if (last.next->value - last.date.value > far) {
    sink.warning("next-far", last.next->span,
                 fmt::format("the next visit, {}, is more than 104 weeks after this one",
                             to_iso(last.next->value)))
        .hint = "is the year right?";
  }
  if (closed_on(salon, last.next->value)) {
    sink.warning(
        "next-closed", last.next->span,
        fmt::format("the salon is closed on the agreed day, {}", to_iso(last.next->value)));
  }
  return last.next->value;
}
}  // namespace

std::optional<NextVisit> next_visit(const Salon& salon, const Pet& pet,
                                    std::span<const RegionGrowth> growth,
                                    std::span<const Visit* const> history, Date today,
                                    DiagnosticSink& sink) {
  std::optional<Due> due = usual_interval(pet);
  shorten_for_owner(due, pet, growth, salon.units, sink);
  shorten_for_mats(due, pet, growth);
  NextVisit out;
  if (!history.empty()) out.last = history.back()->date.value;
  const auto stated = history.empty() ? std::nullopt : agreed(salon, *history.back(), sink);
  if (stated) {
    out.date = out.wanted = *stated;
    out.reason = DueReason::agreed;
  } else {
    if (!due) return std::nullopt;
    out.wanted = out.last.value_or(today) + std::chrono::days(due->days);
    out.date = open_day(salon, out.wanted);
    out.reason = due->reason;
    out.place = due->place;
    out.limit = due->limit;
  }
  out.overdue_days = std::max(0, static_cast<int>((today - out.date).count()));
  return out;
}
}  // namespace furnish
