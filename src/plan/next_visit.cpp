#include "plan/next_visit.h"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>
#include <utility>

#include "base/diagnostic.h"
#include "base/quantity.h"
#include "model/visit.h"
#include "plan/closed_days.h"

namespace furnish {
namespace {
constexpr int shortest_for_owner = 7;  ///< days; no limit brings a dog back within the week

/// An interval from the last visit, and why.
struct Due {
  int days = 0;
  DueReason reason = DueReason::owner_interval;
  std::optional<Place> place;
  std::optional<Length> limit;
};

std::optional<Due> usual_interval(const Pet& pet, Date last) {
  if (pet.visit_every) {
    const auto days = (after(last, pet.visit_every->value) - last).count();
    return Due{static_cast<int>(days), DueReason::owner_interval, {}, {}};
  }
  if (!pet.coat) return std::nullopt;
  const int weeks = (info(*pet.coat).weeks_low + info(*pet.coat).weeks_high) / 2;
  return Due{7 * weeks, DueReason::coat_interval, {}, {}};
}

/// The last day under the limit, but not so early that the visits become a harm of their own.
void shorten(std::optional<Due>& due, const Pet& pet, const LengthLimit& limit, Date last) {
  const bool owners = limit.kind == LimitKind::keep_under;
  const int least = owners ? shortest_for_owner : 7 * info(*pet.coat).weeks_low;
  const int days = std::max(static_cast<int>((limit.passed - last).count()) - 1, least);
  if (due && due->days <= days) return;
  due = Due{days, owners ? DueReason::keep_under : DueReason::mat_prone, limit.place, limit.limit};
}

const Booking* first_booking(std::span<const Booking> bookings, Date from) {
  const Booking* first = nullptr;
  for (const Booking& one : bookings) {
    if (one.date < from) continue;
    if (first == nullptr || std::pair(one.date, one.at) < std::pair(first->date, first->at)) {
      first = &one;
    }
  }
  return first;
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

std::vector<LengthLimit> length_limits(const Salon& salon, const Pet& pet,
                                       std::span<const RegionGrowth> growth, DiagnosticSink& sink) {
  std::vector<LengthLimit> out;
  const auto add = [&](LimitKind kind, const RegionGrowth& row, Length limit, int last_under) {
    out.push_back({kind, row.place, limit, row.since + std::chrono::days(last_under + 1)});
  };
  for (const KeepUnder& keep : pet.preferences.keep_under) {
    for (const RegionGrowth& row : growth) {
      if (!meets(row.place, keep.place)) continue;
      const auto days = days_until_over(row, keep.length);
      if (!days) continue;
      if (*days >= 0) {
        add(LimitKind::keep_under, row, keep.length, *days);
        continue;
      }
      sink.warning("keep-under-unreachable", keep.span,
                   fmt::format("the {} may be left at {}, over the {} it is to stay under",
                               to_text(row.place), to_text(row.left.high, salon.units),
                               to_text(keep.length, salon.units)))
          .hint = "plan a shorter tool there, or raise the limit";
    }
  }
  if (const auto mats = pet.coat ? info(*pet.coat).mats : std::nullopt) {
    for (const RegionGrowth& row : growth) {
      const auto days = days_until_over(row, *mats);
      // Left longer than that it is brushed at home.
      if (days && *days >= 0) add(LimitKind::mat_prone, row, *mats, *days);
    }
  }
  std::ranges::stable_sort(out, {}, [](const LengthLimit& one) {
    return std::tuple(one.passed, one.kind, one.place, one.limit);
  });
  return out;
}

std::optional<Date> first_unread(const PetBookings& bookings, Date from) {
  const auto found = std::ranges::lower_bound(bookings.unread, from);
  return found == bookings.unread.end() ? std::nullopt : std::optional(*found);
}

std::optional<NextVisit> next_visit(const Salon& salon, const Pet& pet,
                                    std::span<const LengthLimit> limits,
                                    std::span<const Visit* const> history,
                                    const PetBookings& bookings, Date today, DiagnosticSink& sink,
                                    const Visit* sent_home) {
  NextVisit out;
  if (!history.empty()) out.last = history.back()->date.value;
  // Who went home without its groom has another day only where one was agreed.
  const bool put_off = sent_home != nullptr && sent_home->next;
  const Visit* const said = put_off ? sent_home : history.empty() ? nullptr : history.back();
  // Also where a booking stands before it, for the fault is in the visit's file.
  const auto stated = said == nullptr ? std::nullopt : agreed(salon, *said, sink);
  // A visit of today that is on file is the one that was booked for today.
  const bool was_here =
      out.last == today || (sent_home != nullptr && sent_home->date.value == today);
  const Date from = was_here ? today + std::chrono::days(1) : today;
  out.unread = first_unread(bookings, from);
  if (const Booking* const booking = first_booking(bookings.known, from)) {
    if (out.unread && *out.unread >= booking->date) out.unread.reset();
    out.sure = !out.unread;
    out.date = out.wanted = booking->date;
    out.reason = DueReason::booked;
    out.at = booking->at;
    if (out.date == today) {
      const Date after = today + std::chrono::days(1);
      const Booking* const then = first_booking(bookings.known, after);
      if (out.sure) out.unread = first_unread(bookings, after);
      if (out.unread && then != nullptr && *out.unread >= then->date) out.unread.reset();
      if (then != nullptr && !out.unread) out.then = BookedFor{then->date, then->at};
    }
  } else if (stated) {
    out.date = out.wanted = *stated;
    out.reason = DueReason::agreed;
  } else if (!out.last) {
    out.date = out.wanted = today;
    out.reason = DueReason::no_visit;
  } else {
    std::optional<Due> due = usual_interval(pet, *out.last);
    if (salon.shorten_visits) {
      for (const LengthLimit& limit : limits) shorten(due, pet, limit, *out.last);
    }
    if (!due) return std::nullopt;
    out.wanted = *out.last + std::chrono::days(due->days);
    out.date = open_day(salon, out.wanted);
    out.reason = due->reason;
    out.place = due->place;
    out.limit = due->limit;
  }
  if (out.reason != DueReason::booked) out.sure = !out.unread;
  // It may be one of the salon's closed days, and would be moved.
  const bool agreed_or_booked = out.reason == DueReason::booked || out.reason == DueReason::agreed;
  if (salon.unknown(SalonPart::closed) && !agreed_or_booked) out.sure = false;
  out.overdue_days = std::max(0, static_cast<int>((today - out.date).count()));
  return out;
}
}  // namespace furnish
