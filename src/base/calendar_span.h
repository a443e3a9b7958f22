#pragma once

#include <chrono>
#include <compare>

#include "base/date.h"

namespace furnish {

/// So many months of the calendar, and days: "3 years", "2 months", "8 weeks".
struct CalendarSpan {
  int months = 0;
  std::chrono::days days{0};

  constexpr CalendarSpan() = default;
  constexpr CalendarSpan(std::chrono::days span) : days(span) {}
  constexpr CalendarSpan(std::chrono::months span) : months(static_cast<int>(span.count())) {}

  /// About how many days: a year counts 365, a month 30.44. To compare spans, never to date.
  constexpr std::chrono::days about() const {
    return days + std::chrono::days(months / 12 * 365 + (months % 12 * 3044 + 50) / 100);
  }
  friend constexpr bool operator==(const CalendarSpan& one, const CalendarSpan& other) {
    return one.about() == other.about();
  }
  friend constexpr std::weak_ordering operator<=>(const CalendarSpan& one,
                                                  const CalendarSpan& other) {
    return one.about() <=> other.about();
  }
};

/// The day so long after another, as XML Schema Part 2, appendix E, adds durations of ISO 8601:
/// the months first, to the last day of a month that has no such day, then the days.
Date after(Date from, const CalendarSpan&);
}  // namespace furnish
