#pragma once

#include <optional>

#include "app/console.h"
#include "app/options.h"
#include "app/workshop.h"
#include "sheet/sheet.h"

namespace furnish {

/// Seven days of a salon from the workshop's on; `complete` is false where something of them cannot
/// be read, which the sheet says. Empty iff an error was reported.
std::optional<Sheet> week_sheet(Workshop&, SalonFolder&, bool& complete);
/// `furnish day --week`: seven days from the workshop's on. A day whose file has faults says so, as
/// does a pet that cannot be read, and the status is one of faults.
Exit print_week(const Options&, Workshop&, Console&);
}  // namespace furnish
