#include "base/amount.h"

#include <fmt/format.h>

#include <cmath>
#include <cstdint>
#include <numeric>

#include "base/fraction_signs.h"

namespace furnish {
namespace {
std::string trimmed_number(double value, int decimals) {
  std::string out = fmt::format("{:.{}f}", value, decimals);
  if (out.find('.') == std::string::npos) return out;
  while (out.ends_with('0')) out.pop_back();
  if (out.ends_with('.')) out.pop_back();
  return out;
}

std::string length_number(Length length, Units units) {
  if (units == Units::us) {
    const double inches = length.in_inches();
    // As on a tailor's tape: fine marks for short coat, eighths from half an inch on.
    return inches_text(inches, inches < 0.125 ? 32 : inches < 0.5 ? 16 : 8);
  }
  // From whole micrometres, so that a quarter inch, 6.35 mm, rounds up as people do: 6.4.
  const std::int64_t um = length.um();
  if (um >= 9950) return fmt::format("{}", (um + 500) / 1000);
  return trimmed_number(static_cast<double>((um + 50) / 100) / 10, 1);
}

std::string_view length_unit(Units units) {
  return units == Units::us ? "in" : "mm";
}

std::string whole(std::int64_t number) {
  return fmt::format("{}", number);
}
}  // namespace

std::string inches_text(double inches, int steps) {
  const auto total = static_cast<std::int64_t>(std::llround(inches * steps));
  const std::int64_t whole = total / steps, part = total % steps;
  if (part == 0) return fmt::format("{}", whole);
  const std::int64_t divisor = std::gcd(part, std::int64_t{steps});
  std::string fraction = fmt::format("{}⁄{}", part / divisor, steps / divisor);
  for (const FractionSign& s : fraction_signs) {
    if (s.numerator == part / divisor && s.denominator == steps / divisor) fraction = s.sign;
  }
  if (whole == 0) return fraction;
  // A made-up fraction needs a gap, or "1" and "3⁄16" would read as thirteen sixteenths.
  const bool sign = fraction.find("⁄") == std::string::npos;
  return fmt::format("{}{}{}", whole, sign ? std::string_view() : narrow_space, fraction);
}

Amounts amounts(Length length, Units units) {
  return {{length_number(length, units), length_unit(units)}};
}

Amounts amounts(LengthRange range, Units units) {
  const std::string low = length_number(range.low, units), high = length_number(range.high, units);
  return {{low == high ? low : low + "–" + high, length_unit(units)}};
}

Amounts amounts(Mass mass, Units units) {
  if (units == Units::metric) return {{fmt::format("{:.1f}", mass.in_kg()), "kg"}};
  const std::int64_t ounces = std::llround(mass.in_pounds() * 16);
  Amounts out{{whole(ounces / 16), "lb"}};
  // Ounces matter on a small dog only; a vet's scale for large ones has none.
  if (ounces % 16 != 0 && ounces < 40 * 16) out.push_back({whole(ounces % 16), "oz"});
  return out;
}

Amounts amounts(Volume volume, Units units) {
  if (units == Units::us) return {{inches_text(volume.in_us_fl_oz(), 4), fluid_ounces}};
  const double ml = volume.in_ml();
  return {{trimmed_number(ml, ml < 9.95 ? 1 : 0), "ml"}};
}

Amounts amounts(std::chrono::seconds time) {
  const std::int64_t s = time.count();
  if (s < 120 && s % 60 != 0) return {{whole(s), "s"}};
  const std::int64_t minutes = (s + 30) / 60;
  if (minutes < 60) return {{whole(minutes), "min"}};
  Amounts out{{whole(minutes / 60), "h"}};
  if (minutes % 60 != 0) out.push_back({whole(minutes % 60), "min"});
  return out;
}

std::string to_text(const Amounts& amounts) {
  std::string out;
  for (const Amount& amount : amounts) {
    if (!out.empty()) out += no_break_space;
    out += amount.number;
    out += narrow_space;
    out += amount.unit;
  }
  return out;
}

std::string to_text(Length length, Units units) {
  return to_text(amounts(length, units));
}
std::string to_text(LengthRange range, Units units) {
  return to_text(amounts(range, units));
}
std::string to_text(Mass mass, Units units) {
  return to_text(amounts(mass, units));
}
std::string to_text(Volume volume, Units units) {
  return to_text(amounts(volume, units));
}
std::string to_text(std::chrono::seconds time) {
  return to_text(amounts(time));
}
}  // namespace furnish
