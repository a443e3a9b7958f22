#pragma once

#include <optional>

#include "sheet/sheet.h"

namespace furnish {

/// The page for the wall: the salon's own rules, and what holds with every dog, with its sources.
/// Of more than a side's length it goes on over others. Empty iff an error was reported.
std::optional<Sheet> make_rules(const Salon&, const Paper&, Date today, const SheetVoice&,
                                DiagnosticSink&);
}  // namespace furnish
