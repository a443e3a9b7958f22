#pragma once

#include <optional>

#include "app/console.h"
#include "app/options.h"
#include "app/workshop.h"
#include "sheet/sheet.h"

namespace furnish {

/// The sheet of a salon's day, which is the workshop's. A pet that cannot be read, or a visit of
/// one, has a row that says so, and `complete` is false. Empty iff an error was reported.
std::optional<Sheet> day_sheet(Workshop&, SalonFolder&, bool& complete);
/// `furnish day`.
Exit print_day(const Options&, Workshop&, Console&);
}  // namespace furnish
