#pragma once

#include <string>
#include <vector>

#include "sheet/parts.h"

namespace furnish {

/// The rows under the alerts, in the order they are needed; what is not there takes no row, unless
/// a hand should write it.
std::vector<SheetRow> card_rows(const SheetDesk&);
}  // namespace furnish
