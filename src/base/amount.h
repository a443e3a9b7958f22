#pragma once

#include <chrono>
#include <string>
#include <string_view>
#include <vector>

#include "base/measures.h"

namespace furnish {

/// U+202F, between a number and its unit.
inline constexpr std::string_view narrow_space = "\u202F";
/// U+00A0, between the parts of a mixed amount.
inline constexpr std::string_view no_break_space = "\u00A0";
/// The one unit of two words.
inline constexpr std::string_view fluid_ounces = "fl\u00A0oz";

/// A number with one unit, as shown: "13" and "mm", "13–25" and "mm", "15½" and "fl oz".
struct Amount {
  std::string number;     ///< with a point, and with a fraction's sign where there is one
  std::string_view unit;  ///< in English, of a literal
};
/// Of a mixed unit the larger first: 10 lb, 3 oz.
using Amounts = std::vector<Amount>;

/// How a quantity is shown to a reader of `units`. Lengths under 10 mm keep one decimal, inches go
/// to the nearest 1/32 below an eighth, 1/16 below a half, else 1/8; masses keep one decimal of a
/// kilogram, or whole ounces.
Amounts amounts(Length, Units);
Amounts amounts(LengthRange, Units);  ///< "13–25"; one value if both ends print alike
Amounts amounts(Mass, Units);
Amounts amounts(Volume, Units);
/// 4 min, 1 h 30 min, 90 s under two minutes unless whole minutes.
Amounts amounts(std::chrono::seconds);

/// In English: "13 mm", "½ in", "4.6 kg", "10 lb 3 oz", "455 ml", "15½ fl oz".
std::string to_text(const Amounts&);
std::string to_text(Length, Units);
std::string to_text(LengthRange, Units);
std::string to_text(Mass, Units);
std::string to_text(Volume, Units);
std::string to_text(std::chrono::seconds);
/// An inch count with its fraction as a sign where there is one ("1¼"), to the nearest 1/`steps`.
std::string inches_text(double inches, int steps);
}  // namespace furnish
