#pragma once

#include <span>
#include <vector>

#include "page/paragraph.h"
#include "plan/matters.h"
#include "sheet/sheet.h"

namespace furnish {

/// What the plan forbids or limits in a line of work, as it stands in that line: "**WARNING** with
/// the lay, #10 or longer". Each begins with its signal word. `places`: the line's; of a matter
/// that is not about all of them it says about which. Empty where there is none.
std::vector<TextSpan> restraint_text(std::span<const Matter>, std::span<const Place> places,
                                     const SheetDesk&);
/// The signal words alone, where what they say stands elsewhere on the sheet.
std::vector<TextSpan> restraint_words(std::span<const Matter>, const SheetDesk&);
}  // namespace furnish
