#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

#include "base/measures.h"

namespace furnish {

/// What reading a word gave: a value, or a fault in words ("expected a length such as …").
template <typename T>
struct Parsed {
  std::optional<T> value;
  std::string fault;
  explicit operator bool() const { return value.has_value(); }
};

/// Quantities as people write them: a number, a unit, and again for mixed units. Numbers are whole,
/// decimal ("4.6"), fractions ("1/2", "1 1/2") or have a fraction sign ("¼", "1¼"). A comma for the
/// point is a fault that says so. Nothing is negative. Units are in lower case:
///   length mm cm in · mass kg g lb oz · volume ml l, "fl oz" and gal (US) · time h min s
///   span days weeks months (singular too; a month is a calendar month and only whole).
Parsed<Length> parse_length(std::string_view);
Parsed<Mass> parse_mass(std::string_view);
Parsed<Volume> parse_volume(std::string_view);
Parsed<std::chrono::seconds> parse_duration(std::string_view);
/// In days; a month counts 30.44 days, a year 365, for "3 years" of validity.
Parsed<std::chrono::days> parse_days(std::string_view);
/// "10:1", "1:10", "1 in 10"; "neat" for undiluted.
Parsed<Dilution> parse_dilution(std::string_view);

/// How a quantity is shown to a reader of `units`, with a narrow no-break space before the unit:
/// "13 mm", "½ in", "4.6 kg", "10 lb 3 oz", "455 ml", "15½ fl oz". Lengths under 10 mm keep one
/// decimal, inches go to the nearest 1/32 below an eighth, 1/16 below a half, else 1/8; masses keep
/// one decimal of a kilogram, or whole ounces.
std::string to_text(Length, Units);
std::string to_text(LengthRange, Units);  ///< "13–25 mm"; one value if both ends print alike
std::string to_text(Mass, Units);
std::string to_text(Volume, Units);
/// "4 min", "1 h 30 min", "90 s" under two minutes unless whole minutes.
std::string to_text(std::chrono::seconds);
/// An inch count with its fraction as a sign where there is one ("1¼"), to the nearest 1/`steps`.
std::string inches_text(double inches, int steps);

/// U+202F, between a number and its unit.
inline constexpr std::string_view narrow_space = "\u202F";
}  // namespace furnish
