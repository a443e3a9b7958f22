#pragma once

#include <vector>

#include "sheet/parts.h"

namespace furnish {

/// Whether lines for a newer groomer are added.
enum class WithHow : bool { no, yes };
/// What comes before the first cut: look over, brush out, bath, nails, drying.
std::vector<SheetRow> style_before(const SheetDesk&, WithHow);
/// Blends, extras and the check of the line, which follow the last cut.
std::vector<SheetRow> style_after(const SheetDesk&);
}  // namespace furnish
