#pragma once

#include <cstdint>
#include <vector>

#include "app/console.h"
#include "app/options.h"
#include "app/workshop.h"

namespace furnish {
class Benches;

/// Sheets of the pets asked for: a file each, or one PDF with --together, or several on each sheet
/// with --copies-per-sheet. A pet with faults renders nothing; the others do.
Exit render_sheets(const Options&, Workshop&, Console&);
/// The same at benches that are kept for what comes after.
Exit render_sheets(const Options&, Workshop&, Console&, Benches&);
/// What changed since the last run: files of pets alone, or something that all may hang on.
enum class Changed : std::uint8_t { pets, shared };
/// Sheets of pets whose files changed, and then those of others that would not be the same now; if
/// only pets changed, of those that were made before. Files that are as they were are not told.
Exit render_changed(const Options&, Workshop&, Console&, Benches&, std::vector<PetPath> changed,
                    Changed);
}  // namespace furnish
