#pragma once

#include "base/diagnostic.h"
#include "page/frame.h"

namespace furnish {

/// True if a page can be painted; else reports each fault: a size that no PDF has (over 14,400 pt,
/// ISO 32000-1 annex C.2), a mark far outside of it, a negative weight, text without a line,
/// hatching without spacing, tags that do not pair, a figure that no text stands for. Any of them
/// is a slip in this program, not in a person's file; a painter that met it would hang or write a
/// broken file.
bool check_page(const Frame& page, DiagnosticSink& sink);
}  // namespace furnish
