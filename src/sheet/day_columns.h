#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "base/length.h"

namespace furnish {

/// One thing that stands in a column, under those before it.
struct ColumnItem {
  Length height;
  bool opens = false;  ///< it begins something: a column rather begins here
  Length head{};       ///< above it where a column begins with it all the same
};

/// Whether columns begin only with what opens, or with any item.
enum class ColumnCuts : std::uint8_t { at_openings, anywhere };

/// Items in `columns` columns, in order, so that the tallest is as low as can be: the first item of
/// each column, ascending; one that equals the number of items is empty, as are all after it.
/// `over`: what stands over each column already, as a page's head; empty: nothing.
/// pre: columns > 0
std::vector<std::size_t> column_starts(std::span<const ColumnItem>, std::size_t columns, ColumnCuts,
                                       std::span<const Length> over = {});
}  // namespace furnish
