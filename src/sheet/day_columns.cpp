#include "sheet/day_columns.h"

#include <algorithm>
#include <limits>

namespace furnish {

std::vector<std::size_t> column_starts(std::span<const ColumnItem> items, std::size_t columns,
                                       ColumnCuts cuts, std::span<const Length> over) {
  const std::size_t count = items.size();
  const auto may_begin = [&](std::size_t i) {
    return i == 0 || i == count || items[i].opens || cuts == ColumnCuts::anywhere;
  };
  // tallest[c][i]: of the items from i on in c columns; next[c][i]: where the second begins.
  constexpr Length never = Length::micrometres(std::numeric_limits<std::int64_t>::max());
  std::vector<std::vector<Length>> tallest(columns + 1, std::vector<Length>(count + 1, never));
  std::vector<std::vector<std::size_t>> next(columns + 1, std::vector<std::size_t>(count + 1));
  tallest[0][count] = {};
  for (std::size_t c = 1; c <= columns; ++c) {
    for (std::size_t i = 0; i <= count; ++i) {
      Length height = i < count && !items[i].opens ? items[i].head : Length{};
      if (!over.empty()) height += over[columns - c];
      for (std::size_t j = i; j <= count; ++j) {
        if (may_begin(j) && tallest[c - 1][j] != never && (j > i || i == count)) {
          const Length all = std::max(height, tallest[c - 1][j]);
          if (all < tallest[c][i]) {
            tallest[c][i] = all;
            next[c][i] = j;
          }
        }
        if (j < count) height += items[j].height;
      }
    }
  }
  std::vector<std::size_t> out{0};
  for (std::size_t c = columns; c > 1; --c) out.push_back(next[c][out.back()]);
  return out;
}
}  // namespace furnish
