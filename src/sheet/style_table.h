#pragma once

#include <cstdint>
#include <vector>

#include "page/block.h"
#include "sheet/style_rows.h"

namespace furnish {

/// Whether a ruler of its length lies under the row: it is cut, and to more than a speck.
bool has_bar(const StyleRow&);
/// What a row says of a caution: what to do, or its signal word alone, where there is no room for
/// more and the caution stands above.
enum class RowCautions : std::uint8_t { in_full, signal_words };

/// The table: number, tool, part and how, what is left in both systems of units, and its bar at
/// true size.
BlockPtr style_table(const std::vector<StyleRow>&, const SheetDesk&, RowCautions,
                     Length least_gutter);
/// The same rows in two columns, each tool over its rows; for a trim of many short rows.
BlockPtr style_table_in_two(const std::vector<StyleRow>&, const SheetDesk&);
/// The same rows in several short tables of one column, for a sheet that goes on.
std::vector<BlockPtr> style_table_in_pieces(const std::vector<StyleRow>&, const SheetDesk&);
}  // namespace furnish
