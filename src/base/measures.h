#pragma once

#include <compare>
#include <cstdint>

#include "base/length.h"

namespace furnish {

/// Which units a reader is shown; files may use either, anywhere.
enum class Units : std::uint8_t { metric, us };

/// A mass in whole micrograms, so that a pound is exact: 0.45359237 kg (NIST Handbook 44, App. C).
class Mass {
 public:
  constexpr Mass() = default;
  static constexpr Mass micrograms(std::int64_t ug) { return Mass(ug); }
  static constexpr Mass kg(double kg) { return Mass(static_cast<std::int64_t>(kg * 1e9 + 0.5)); }
  static constexpr Mass pounds(double lb) {
    return Mass(static_cast<std::int64_t>(lb * 453'592'370.0 + 0.5));
  }
  constexpr std::int64_t ug() const { return ug_; }
  constexpr double in_kg() const { return static_cast<double>(ug_) / 1e9; }
  constexpr double in_pounds() const { return static_cast<double>(ug_) / 453'592'370.0; }
  friend constexpr auto operator<=>(Mass, Mass) = default;
  friend constexpr Mass operator+(Mass a, Mass b) { return Mass(a.ug_ + b.ug_); }
  friend constexpr Mass operator-(Mass a, Mass b) { return Mass(a.ug_ - b.ug_); }

 private:
  constexpr explicit Mass(std::int64_t ug) : ug_(ug) {}
  std::int64_t ug_ = 0;
};

/// A volume in whole nanolitres. US fluid ounce 29.5735295625 ml, US gallon 3785.411784 ml,
/// imperial fluid ounce 28.4130625 ml (NIST Handbook 44, App. C); plain "fl oz" in a file is the US
/// one.
class Volume {
 public:
  constexpr Volume() = default;
  static constexpr Volume nanolitres(std::int64_t nl) { return Volume(nl); }
  static constexpr Volume ml(double ml) {
    return Volume(static_cast<std::int64_t>(ml * 1e6 + 0.5));
  }
  static constexpr Volume us_fl_oz(double oz) { return ml(oz * 29.5735295625); }
  constexpr std::int64_t nl() const { return nl_; }
  constexpr double in_ml() const { return static_cast<double>(nl_) / 1e6; }
  constexpr double in_us_fl_oz() const { return in_ml() / 29.5735295625; }
  friend constexpr auto operator<=>(Volume, Volume) = default;
  friend constexpr Volume operator+(Volume a, Volume b) { return Volume(a.nl_ + b.nl_); }
  friend constexpr Volume operator-(Volume a, Volume b) { return Volume(a.nl_ - b.nl_); }

 private:
  constexpr explicit Volume(std::int64_t nl) : nl_(nl) {}
  std::int64_t nl_ = 0;
};

/// How a concentrate is mixed. Two meanings are in print: "10:1" and "1:10" are ten parts of water
/// to one part of product; "1 in 10" is one part of ten in all.
struct Dilution {
  double product = 1, total = 1;  ///< parts; total counts the product; 1 of 1 is undiluted
  constexpr double share() const { return product / total; }
  friend constexpr bool operator==(Dilution, Dilution) = default;
};
}  // namespace furnish
