#pragma once

#include <optional>

#include "sheet/parts.h"

namespace furnish {

/// What is on file of the pet's vaccinations, for staff: those of the salon's rules with how long
/// they count, and all others with their day. Empty where nothing is on file and nothing required.
std::optional<SheetRow> vaccinations_row(const SheetDesk&);
}  // namespace furnish
