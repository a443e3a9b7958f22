#pragma once

#include <array>
#include <string_view>

namespace furnish::words {

// Words of files whose enumerations have no table in trade/, in the order of the enumerations. The
// readers look them up, the writer writes them.
inline constexpr std::array<std::string_view, 3> sizes{"short", "medium", "long"};
inline constexpr std::array<std::string_view, 5> ears{"prick", "semi-prick", "drop", "button",
                                                      "rose"};
inline constexpr std::array<std::string_view, 5> tails{"plume", "sickle", "sabre", "otter",
                                                       "docked"};
inline constexpr std::array<std::string_view, 4> product_kinds{"shampoo", "conditioner", "spray",
                                                               "other"};
inline constexpr std::array<std::string_view, 2> strip{"hand", "knife"};
inline constexpr std::array<std::string_view, 2> audience{"staff", "everyone"};

/// The word of an enumeration's value.
template <typename Enum, std::size_t n>
constexpr std::string_view word(const std::array<std::string_view, n>& table, Enum value) {
  return table.at(static_cast<std::size_t>(value));
}
}  // namespace furnish::words
