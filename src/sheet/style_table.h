#pragma once

#include <vector>

#include "page/block.h"
#include "sheet/style_rows.h"
#include "sheet/style_work.h"

namespace furnish {

/// The table: number, tool, part and how, what is left in both systems of units, and its bar at
/// true size. `after`: the last rows, blends, finish and the check of the line.
BlockPtr style_table(const std::vector<StyleRow>&, const SheetDesk&, WithHow,
                     std::vector<SheetRow> after);
/// The same rows in two columns, each tool over its rows; for a trim of many short rows. Without
/// what follows the last cut.
BlockPtr style_table_in_two(const std::vector<StyleRow>&, const SheetDesk&);
/// The same rows in several short tables of one column, for a sheet that goes on.
std::vector<BlockPtr> style_table_in_pieces(const std::vector<StyleRow>&, const SheetDesk&);
}  // namespace furnish
