#pragma once

#include "sheet/sheet.h"

namespace furnish {

/// The kennel card: what anyone who opens the kennel needs, in the order they need it. Never a
/// phone number or an address unless the salon asks for it. Empty iff an error was reported: it
/// does not fit on the paper.
std::optional<Sheet> make_card(const SheetDesk&, DiagnosticSink&);
}  // namespace furnish
