#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

#include "base/date.h"

namespace furnish {

/// In which order a list writes its dates.
enum class DateOrder : std::uint8_t { day_first, month_first, year_first };
inline constexpr std::array date_orders{DateOrder::day_first, DateOrder::month_first,
                                        DateOrder::year_first};

/// A day that has been, as spreadsheets and people write it: "24/11/2019", "11-24-19",
/// "24.11.2019", "2019-11-24", "24 Nov 2019", "24 de noviembre de 2019", a time behind it that is
/// midnight. Whatever the order, four digits are the year, a month may be a word, and numbers with
/// points between stand day first (common practice, no source). A year of two digits is the last
/// that has been. Empty if it is no day in that order, or one after `today`.
std::optional<Date> loose_date(std::string_view, DateOrder, Date today);

/// What all dates of a column together say of their order.
struct DateColumn {
  std::optional<DateOrder> order;  ///< empty: it must be said
  /// Where it must be said: two of them that have no order in common, or one, twice, that is
  /// another day in another order.
  std::size_t one = 0, other = 0;
};
/// Those that are no dates in any order do not count.
DateColumn date_column(std::span<const std::string_view>, Date today);
}  // namespace furnish
