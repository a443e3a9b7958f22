#pragma once

#include <optional>
#include <span>

#include "plan/day_plan.h"
#include "sheet/sheet.h"

namespace furnish {

/// One day of a week.
struct WeekDay {
  Date date;
  bool closed = false;  ///< the salon is
  bool unread = false;  ///< its file has faults: nobody knows what is booked
  DayPlan plan{};       ///< without blocks where nothing is booked
};

/// Days one after another on the wall: at the top the minutes of each groomer, a day a column; then
/// each day by groomer, its pets with their hours, how grave what can hurt is, and what cannot go
/// as it is booked. One page where that can be; else days flow on. Empty iff an error was reported.
std::optional<Sheet> make_week(const Salon&, std::span<const WeekDay>, const Paper&,
                               const SheetVoice&, DiagnosticSink&);
}  // namespace furnish
