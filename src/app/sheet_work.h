#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/options.h"
#include "app/output_file.h"
#include "app/sheet_files.h"
#include "app/workshop.h"
#include "base/diagnostic.h"
#include "page/frame.h"

namespace furnish {

/// What came of a pet whose sheet was asked for.
struct SheetWork {
  bool good = true;
  std::optional<Done> done;         ///< empty: there is none to be made, or not all is good
  std::optional<SheetFiles> files;  ///< empty also where all pets share one file
  DiagnosticSink making, encoding;  ///< what was said, of the two in turn
};

/// Makes a pet's sheet, and the files that it becomes unless it goes together with others. What is
/// said of the salon goes to the shop's own sink. `to`: a file for all, or the folder for each.
SheetWork make_sheet(const PetPath&, const Options&, Workshop&, const SheetPlace& to);

/// The pages of one file: the sheets' own sides, or larger sheets with several of them. Empty after
/// an error.
std::optional<std::vector<Frame>> pages_of(std::vector<std::vector<Frame>> sheets, const Options&,
                                           const Salon&, DiagnosticSink&);
}  // namespace furnish
