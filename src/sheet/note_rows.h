#pragma once

#include <vector>

#include "sheet/note.h"
#include "sheet/parts.h"

namespace furnish {

/// How it came in, what was done, how it left, findings, products, what was told and agreed, when
/// it comes again. What nobody said takes no row.
std::vector<SheetRow> note_rows(const NoteDesk&);
/// The visit's findings, in the order of the file; their numbers are those on the figure.
std::vector<const Finding*> note_findings(const NoteDesk&);
}  // namespace furnish
