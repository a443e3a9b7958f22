#pragma once

#include "sheet/parts.h"

namespace furnish {

/// When the pet comes again and why: the booking that follows, or the next date with its reason; a
/// line for a hand where that is still to be agreed, after about when it should be.
SheetRow due_row(const SheetDesk&);
/// "every 8 weeks", "every 2 months": an interval as the owner has it.
std::string every_text(const CalendarSpan&, const Words&);
/// Of a pet without one: "No groom on file", and since when it comes all the same.
std::string no_visit_text(const Pet&, const Words&);
}  // namespace furnish
