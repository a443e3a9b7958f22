#pragma once

#include "sheet/parts.h"

namespace furnish {

/// When the pet comes again and why: the booking that follows, or the next date with its reason; a
/// line for a hand where that is still to be agreed, after about when it should be.
SheetRow due_row(const SheetDesk&);
}  // namespace furnish
