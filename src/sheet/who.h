#pragma once

#include <vector>

#include "page/paragraph.h"
#include "sheet/sheet.h"

namespace furnish {

/// "Spitz cross, orange sable" and "male, neutered · 5 years · 4.6 kg": so that the right dog comes
/// out.
std::vector<TextSpan> looks_text(const SheetDesk&);
std::vector<TextSpan> facts_text(const SheetDesk&);
}  // namespace furnish
