#pragma once

#include <array>
#include <string_view>

namespace furnish {

/// Fractions that Unicode has a sign for, as far as people write them in measures.
struct FractionSign {
  std::string_view sign;
  int numerator, denominator;
};
inline constexpr std::array fraction_signs{
    FractionSign{"½", 1, 2}, FractionSign{"¼", 1, 4}, FractionSign{"¾", 3, 4},
    FractionSign{"⅛", 1, 8}, FractionSign{"⅜", 3, 8}, FractionSign{"⅝", 5, 8},
    FractionSign{"⅞", 7, 8}, FractionSign{"⅓", 1, 3}, FractionSign{"⅔", 2, 3},
};
}  // namespace furnish
