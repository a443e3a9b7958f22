#pragma once

#include <vector>

#include "app/console.h"
#include "app/options.h"
#include "app/workshop.h"

namespace furnish {
struct Benches;

/// Sheets of the pets asked for: a file each, or one PDF with --together, or several on each sheet
/// with --copies-per-sheet. A pet with faults renders nothing; the others do.
Exit render_sheets(const Options&, Workshop&, Console&);
/// The same at benches that are kept for what comes after.
Exit render_sheets(const Options&, Workshop&, Console&, Benches&);
/// Sheets of pets whose files changed, and then those of others that were made before and would not
/// be the same now. Files that are as they were are not told.
Exit render_changed(const Options&, Workshop&, Console&, Benches&, std::vector<PetPath> changed);
}  // namespace furnish
