#pragma once

#include <string>
#include <vector>

#include "sheet/sheet.h"

namespace furnish {

/// Boxes to tick, in the order of the work of this plan.
std::vector<std::string> card_ticks(const SheetDesk&);
}  // namespace furnish
