#pragma once

#include <algorithm>
#include <array>
#include <optional>
#include <span>
#include <string_view>

namespace furnish::words {

// Words of files whose enumerations have no table in trade/, in the order of the enumerations. The
// readers look them up, the writer writes them.
inline constexpr std::array<std::string_view, 3> sizes{"short", "medium", "long"};
inline constexpr std::array<std::string_view, 5> ears{"prick", "semi-prick", "drop", "button",
                                                      "rose"};
inline constexpr std::array<std::string_view, 5> tails{"plume", "sickle", "sabre", "otter",
                                                       "docked"};
inline constexpr std::array<std::string_view, 3> bones{"fine", "medium", "heavy"};
inline constexpr std::array<std::string_view, 4> product_kinds{"shampoo", "conditioner", "spray",
                                                               "other"};
inline constexpr std::array<std::string_view, 2> strip{"hand", "knife"};
inline constexpr std::array<std::string_view, 3> lay{"with", "across", "against"};
inline constexpr std::array<std::string_view, 2> audience{"staff", "everyone"};
inline constexpr std::array<std::string_view, 2> bath_when{"first", "after clipping"};
inline constexpr std::array<std::string_view, 3> sides{"both", "left", "right"};
inline constexpr std::array<std::string_view, 2> photo_times{"before", "after"};
inline constexpr std::array<std::string_view, 3> done_parts{"bath", "brushing", "nails"};
inline constexpr std::array<std::string_view, 2> units{"metric", "us"};
inline constexpr std::array<std::string_view, 2> felted{"clip first", "bath first"};
/// From Sunday, as std::chrono::weekday counts.
inline constexpr std::array<std::string_view, 7> weekdays{
    "sunday", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday"};

/// The word of an enumeration's value.
template <typename Enum, std::size_t n>
constexpr std::string_view word(const std::array<std::string_view, n>& table, Enum value) {
  return table.at(static_cast<std::size_t>(value));
}

/// The value of a word.
template <const auto& table, typename Enum>
std::optional<Enum> parse_in(std::string_view word) {
  const auto* const found = std::ranges::find(table, word);
  if (found == table.end()) return std::nullopt;
  return static_cast<Enum>(found - table.begin());
}

template <const auto& table>
std::span<const std::string_view> all() {
  return table;
}
}  // namespace furnish::words
