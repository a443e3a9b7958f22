#pragma once

#include <optional>

#include "sheet/alerts.h"
#include "sheet/parts.h"

namespace furnish {

/// What of the plan was accepted, a short sentence each: "Rump, #7F: accepted 28 Apr. Vet's order."
/// On the card what would stand there; elsewhere all, standing advice too. Empty if nothing was.
std::optional<SheetRow> accepted_row(const SheetDesk&, CautionScope);
}  // namespace furnish
