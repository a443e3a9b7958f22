#pragma once

#include "app/console.h"
#include "app/options.h"
#include "app/workshop.h"

namespace furnish {

/// Sheets of the pets asked for: a file each, or one PDF with --together, or several on each sheet
/// with --copies-per-sheet. A pet with faults renders nothing; the others do.
Exit render_sheets(const Options&, Workshop&, Console&);
}  // namespace furnish
