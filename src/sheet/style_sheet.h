#pragma once

#include "sheet/sheet.h"

namespace furnish {

/// The style sheet: one sheet of paper, on small paper more, from which a groomer who never met the
/// dog gives it the trim its owner expects. In the order of a good hand-over: how serious, who,
/// what to do, what if, read back (the five elements of I-PASS; PMC10964397). Empty iff an error
/// was reported: it does not fit.
std::optional<Sheet> make_style_sheet(const SheetDesk&, DiagnosticSink&);
}  // namespace furnish
