#pragma once

#include <optional>

#include "plan/day_plan.h"
#include "sheet/sheet.h"

namespace furnish {

/// A salon's day on the wall: by groomer, so that it can be cut, each with the bookings by their
/// hours; then what to mix and whom to ring. One page; two where it must be, between two groomers
/// if that can be; longer days flow on. Empty iff an error was reported.
std::optional<Sheet> make_day(const Salon&, const Day&, const DayPlan&, const Paper&,
                              const SheetVoice&, DiagnosticSink&);
}  // namespace furnish
