#pragma once

#include <compare>
#include <cstdint>

namespace furnish {

/// A length, kept as whole micrometres, so that 0.8 mm from a file, a table and a test are equal.
/// For coat and paper alike; typographic points exist only where a page is set and painted. There
/// is no NaN and no infinity.
class Length {
 public:
  constexpr Length() = default;
  static constexpr Length micrometres(std::int64_t um) { return Length(um); }
  /// Nearest micrometre to `mm`. pre: finite, at most 100 km: parse_length() sees to it for files.
  static constexpr Length mm(double mm) {
    return Length(static_cast<std::int64_t>(mm * 1000 + (mm < 0 ? -0.5 : 0.5)));
  }
  /// `numerator`/`denominator` of an inch, to the nearest micrometre. 25.4 mm to the inch exactly
  /// (NIST Handbook 44, Appendix C).
  static constexpr Length inches(std::int64_t numerator, std::int64_t denominator = 1) {
    return Length((2 * 25400 * numerator + denominator) / (2 * denominator));
  }
  /// Typographic points of 25.4/72 mm, as PDF counts them.
  static constexpr Length points(double pt) { return mm(pt * 25.4 / 72); }

  constexpr std::int64_t um() const { return um_; }
  constexpr double in_mm() const { return static_cast<double>(um_) / 1000; }
  constexpr double in_inches() const { return static_cast<double>(um_) / 25400; }
  constexpr double in_points() const { return in_mm() * 72 / 25.4; }

  friend constexpr auto operator<=>(Length, Length) = default;
  friend constexpr Length operator+(Length a, Length b) { return Length(a.um_ + b.um_); }
  friend constexpr Length operator-(Length a, Length b) { return Length(a.um_ - b.um_); }
  friend constexpr Length operator-(Length a) { return Length(-a.um_); }
  friend constexpr Length operator*(Length a, std::int64_t n) { return Length(a.um_ * n); }
  friend constexpr Length operator*(std::int64_t n, Length a) { return a * n; }
  friend constexpr Length operator/(Length a, std::int64_t n) { return Length(a.um_ / n); }
  friend constexpr double operator/(Length a, Length b) {
    return static_cast<double>(a.um_) / static_cast<double>(b.um_);
  }
  constexpr Length& operator+=(Length b) { return *this = *this + b; }
  constexpr Length& operator-=(Length b) { return *this = *this - b; }

 private:
  constexpr explicit Length(std::int64_t um) : um_(um) {}
  std::int64_t um_ = 0;
};

/// `length` times a number that is not whole, to the nearest micrometre.
constexpr Length scaled(Length length, double factor) {
  return Length::mm(length.in_mm() * factor);
}

/// Both ends belong to it. pre: low <= high.
struct LengthRange {
  Length low, high;
  friend constexpr bool operator==(LengthRange, LengthRange) = default;
};

inline namespace literals {
consteval Length operator""_mm(long double mm) {
  return Length::mm(static_cast<double>(mm));
}
consteval Length operator""_mm(unsigned long long mm) {
  return Length::micrometres(static_cast<std::int64_t>(mm) * 1000);
}
consteval Length operator""_um(unsigned long long um) {
  return Length::micrometres(static_cast<std::int64_t>(um));
}
}  // namespace literals
}  // namespace furnish
