#pragma once

#include "page/block.h"
#include "sheet/sheet.h"

namespace furnish {

/// The dog with the places that no tool may touch marked on it, seen from each side that has one;
/// null unless left and right matter. Drawn only when it is placed, which most cards have no room
/// for.
BlockPtr no_touch_figure(const SheetDesk&);
/// Its width.
inline constexpr Length no_touch_width = Length::mm(32);
}  // namespace furnish
