#pragma once

#include <string>

#include "sheet/sheet.h"

namespace furnish {

/// What a calendar entry of the next visit says: "Marlow: grooming at Lantern Street Dogs".
std::string visit_summary(const SheetDesk&);
/// Why that day, and how to reach the salon; a line each.
std::string visit_description(const SheetDesk&);
}  // namespace furnish
