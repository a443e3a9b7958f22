#include "sheet/day_columns.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>

using namespace furnish;

namespace {
/// How high the tallest column is that begins and ends there.
Length tallest(const std::vector<ColumnItem>& items, std::vector<std::size_t> starts) {
  starts.push_back(items.size());
  Length out;
  for (std::size_t c = 0; c + 1 < starts.size(); ++c) {
    Length height;
    for (std::size_t i = starts[c]; i < starts[c + 1]; ++i) {
      if (i == starts[c] && !items[i].opens) height += items[i].head;
      height += items[i].height;
    }
    out = std::max(out, height);
  }
  return out;
}

/// Of all ways to begin columns, by trying each.
Length lowest(const std::vector<ColumnItem>& items, std::vector<std::size_t> starts,
              std::size_t columns, ColumnCuts cuts) {
  if (starts.size() == columns) return tallest(items, starts);
  Length out = Length::mm(1e6);
  for (std::size_t i = starts.back(); i <= items.size(); ++i) {
    const bool none = i == starts.back() && i < items.size();
    const bool opens = i == items.size() || items[i].opens || cuts == ColumnCuts::anywhere;
    if (none || !opens) continue;
    std::vector<std::size_t> more = starts;
    more.push_back(i);
    out = std::min(out, lowest(items, more, columns, cuts));
  }
  return out;
}
}  // namespace

TEST_CASE("columns are as even as any that could be made", "[day]") {
  std::mt19937 dice(15);
  for (int round = 0; round < 300; ++round) {
    std::vector<ColumnItem> items(1 + dice() % 9);
    for (ColumnItem& item : items) {
      item = {Length::mm(5.0 + static_cast<double>(dice() % 20)), dice() % 3 == 0, Length::mm(4)};
    }
    items.front().opens = true;
    for (const std::size_t columns : {std::size_t{1}, std::size_t{2}, std::size_t{4}}) {
      for (const ColumnCuts cuts : {ColumnCuts::at_openings, ColumnCuts::anywhere}) {
        const auto starts = column_starts(items, columns, cuts);
        REQUIRE(starts.size() == columns);
        CHECK(std::ranges::is_sorted(starts));
        CHECK(tallest(items, starts) == lowest(items, {0}, columns, cuts));
        for (const std::size_t start : starts) {
          CHECK((start == items.size() || items[start].opens || cuts == ColumnCuts::anywhere));
        }
      }
    }
  }
}

TEST_CASE("a groomer begins a column, where that costs nothing", "[day]") {
  const ColumnItem row{Length::mm(10), false, Length::mm(5)}, first{Length::mm(15), true, {}};
  const std::vector<ColumnItem> items{first, row, first, row};
  CHECK(column_starts(items, 2, ColumnCuts::at_openings) == std::vector<std::size_t>{0, 2});
  CHECK(column_starts(items, 2, ColumnCuts::anywhere) == std::vector<std::size_t>{0, 2});
}
