#include "base/quantity.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <span>
#include <vector>

#include "base/fraction_signs.h"
#include "base/text.h"

namespace furnish {
namespace {
/// What else people write for a unit, with spaces between; letters of either case.
struct Unit {
  std::string_view word;
  double size;  ///< in the base unit of its kind: mm, g, ml, s, days
  std::string_view also = {};
  int months = 0;  ///< of the calendar; then it has no other size
};

constexpr std::array length_units{Unit{"mm", 1, "millimetre millimetres millimeter millimeters"},
                                  Unit{"cm", 10, "centimetre centimetres centimeter centimeters"},
                                  Unit{"in", 25.4, "inch inches \" ″"}};
constexpr std::array mass_units{Unit{"kg", 1000, "kgs kilo kilos kilogram kilograms"},
                                Unit{"g", 1, "gr gram grams gramme grammes"},
                                Unit{"lb", 453.59237, "lbs pound pounds"},
                                Unit{"oz", 28.349523125, "ounce ounces"}};
constexpr std::array volume_units{Unit{"ml", 1, "millilitre millilitres milliliter milliliters"},
                                  Unit{"l", 1000, "litre litres liter liters"},
                                  Unit{"fl oz", 29.5735295625},
                                  Unit{"gal", 3785.411784, "gallon gallons"}};
constexpr std::array time_units{Unit{"h", 3600, "hr hrs hour hours"},
                                Unit{"min", 60, "mins minute minutes"},
                                Unit{"s", 1, "sec secs second seconds"}};
constexpr std::array day_units{Unit{"day", 1},
                               Unit{"days", 1},
                               Unit{"week", 7, "wk"},
                               Unit{"weeks", 7, "wks"},
                               Unit{"month", 0, "mo", 1},
                               Unit{"months", 0, "mos", 1},
                               Unit{"year", 0, "yr", 12},
                               Unit{"years", 0, "yrs", 12}};

/// What a kind of quantity is called in messages, and its units.
struct Kind {
  std::string_view noun, examples;
  std::span<const Unit> units;
};

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

/// Reads numbers and units from the front of a text.
class Scanner {
 public:
  explicit Scanner(std::string_view text) : rest_(text) {}

  void skip_space() {
    while (true) {
      if (rest_.starts_with(' ')) {
        rest_.remove_prefix(1);
      } else if (rest_.starts_with("\u00A0")) {
        rest_.remove_prefix(2);
      } else if (rest_.starts_with(narrow_space) || rest_.starts_with("\u2009")) {
        rest_.remove_prefix(3);
      } else {
        return;
      }
    }
  }
  /// Of a word that was cut short: "19.4 lbs."
  void skip_point() {
    if (rest_.starts_with('.')) rest_.remove_prefix(1);
  }
  bool done() const { return rest_.empty(); }
  std::string_view rest() const { return rest_; }

  std::optional<double> whole() {
    std::size_t n = 0;
    while (n < rest_.size() && is_digit(rest_[n])) ++n;
    if (n == 0 || n > 9) return std::nullopt;
    double value = 0;
    for (const char c : rest_.substr(0, n)) value = value * 10 + (c - '0');
    rest_.remove_prefix(n);
    return value;
  }

  std::optional<double> sign() {
    for (const FractionSign& s : fraction_signs) {
      if (!rest_.starts_with(s.sign)) continue;
      rest_.remove_prefix(s.sign.size());
      return static_cast<double>(s.numerator) / s.denominator;
    }
    return std::nullopt;
  }

  /// "4", "4.6", "1/2", "1 1/2", "½", "1½".
  std::optional<double> number() {
    if (const auto fraction = sign()) return fraction;
    auto first = whole();
    if (!first) return std::nullopt;
    if (skip_slash()) return divided(*first);
    if (rest_.size() > 1 && rest_[0] == '.' && is_digit(rest_[1])) {
      rest_.remove_prefix(1);
      double place = 0.1;
      while (!rest_.empty() && is_digit(rest_[0])) {
        *first += place * (rest_[0] - '0');
        place /= 10;
        rest_.remove_prefix(1);
      }
      return first;
    }
    return first_and_fraction(*first);
  }

  std::string_view word() {
    for (const std::string_view sign : {"\"", "″"}) {
      if (!rest_.starts_with(sign)) continue;
      rest_.remove_prefix(sign.size());
      return sign;
    }
    std::size_t n = 0;
    while (n < rest_.size() &&
           ((rest_[n] >= 'a' && rest_[n] <= 'z') || (rest_[n] >= 'A' && rest_[n] <= 'Z'))) {
      ++n;
    }
    const std::string_view out = rest_.substr(0, n);
    rest_.remove_prefix(n);
    return out;
  }

 private:
  /// A slash, or the fraction slash that inches_text() writes.
  bool skip_slash() {
    const std::string_view slash = rest_.starts_with('/') ? "/" : "⁄";
    if (!rest_.starts_with(slash)) return false;
    rest_.remove_prefix(slash.size());
    return true;
  }

  std::optional<double> divided(double numerator) {
    const auto denominator = whole();
    if (!denominator || *denominator == 0) return std::nullopt;
    return numerator / *denominator;
  }

  std::optional<double> first_and_fraction(double first) {
    const Scanner before = *this;
    skip_space();
    if (const auto fraction = sign()) return first + *fraction;
    if (const auto numerator = whole(); numerator && skip_slash()) {
      const auto fraction = divided(*numerator);
      if (!fraction) return std::nullopt;
      return first + *fraction;
    }
    *this = before;
    return first;
  }

  std::string_view rest_;
};

std::string unit_list(std::span<const Unit> units) {
  std::vector<std::string> words;
  for (const Unit& unit : units) words.emplace_back(unit.word);
  return listed(words, " or ");
}

bool names(const Unit& unit, std::string_view lower) {
  if (unit.word == lower) return true;
  for (std::string_view rest = unit.also; !rest.empty();) {
    const std::size_t end = std::min(rest.find(' '), rest.size());
    if (rest.substr(0, end) == lower) return true;
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  return false;
}

/// True for "5-10 min", "5–10 min" and "5 to 10 min", behind the 5.
bool goes_on_as_range(std::string_view rest) {
  rest = trimmed(rest);
  for (const std::string_view dash : {"-", "–", "—", "to "}) {
    if (!rest.starts_with(dash)) continue;
    const std::string_view after = trimmed(rest.substr(dash.size()));
    return !after.empty() && is_digit(after.front());
  }
  return false;
}

/// In the base unit of the kind, and months of the calendar.
struct Sum {
  double size = 0, months = 0;
};
/// The sum of all numbers with their units.
Parsed<Sum> parse_sum(std::string_view written, const Kind& kind) {
  const auto fault = [&](std::string_view why) {
    return Parsed<Sum>{{},
                       fmt::format("expected {} such as {}, found \"{}\"{}", kind.noun,
                                   kind.examples, written, why)};
  };
  Scanner scan(trimmed(written));
  if (scan.done()) return fault("");
  if (scan.rest().starts_with('-')) return fault("; it cannot be negative");
  if (scan.rest().starts_with('#')) return fault("; numbers of tools differ, so its size is asked");
  Sum sum;
  while (!scan.done()) {
    const auto value = scan.number();
    if (!value) return fault("");
    if (scan.rest().starts_with(',')) return fault("; write the number with a point, not a comma");
    if (goes_on_as_range(scan.rest())) {
      return fault("; that is from one to another, and it is one number that is worked with");
    }
    scan.skip_space();
    std::string unit(scan.word());
    std::string lower = lower_ascii(unit);
    if (lower == "fl") {
      scan.skip_space();
      const std::string second(scan.word());
      unit += ' ' + second;
      lower += ' ' + lower_ascii(second);
    }
    if (unit.empty()) return fault("; the unit is missing: " + unit_list(kind.units));
    const auto known =
        std::ranges::find_if(kind.units, [&](const Unit& one) { return names(one, lower); });
    if (known == kind.units.end()) {
      return fault(fmt::format("; '{}' is not one of {}", unit, unit_list(kind.units)));
    }
    sum.size += *value * known->size;
    sum.months += *value * known->months;
    scan.skip_point();
    scan.skip_space();
  }
  return {sum, {}};
}

template <typename T, typename Make>
Parsed<T> parse_as(std::string_view written, const Kind& kind, Make make) {
  const Parsed<Sum> sum = parse_sum(written, kind);
  if (!sum) return {{}, sum.fault};
  if (sum.value->size > 1e8 || sum.value->months > 1e6) {
    return {{}, fmt::format("{} is beyond all measure", written)};
  }
  return {make(*sum.value), {}};
}
}  // namespace

Parsed<Length> parse_length(std::string_view written) {
  static constexpr Kind kind{"a length", "\"13 mm\" or \"1/2 in\"", length_units};
  return parse_as<Length>(written, kind, [](const Sum& mm) { return Length::mm(mm.size); });
}
Parsed<Mass> parse_mass(std::string_view written) {
  static constexpr Kind kind{"a weight", "\"4.6 kg\" or \"10 lb 3 oz\"", mass_units};
  return parse_as<Mass>(written, kind, [](const Sum& g) {
    return Mass::micrograms(static_cast<std::int64_t>(std::llround(g.size * 1e6)));
  });
}
Parsed<Volume> parse_volume(std::string_view written) {
  static constexpr Kind kind{"a volume", "\"500 ml\" or \"16 fl oz\"", volume_units};
  return parse_as<Volume>(written, kind, [](const Sum& ml) { return Volume::ml(ml.size); });
}
Parsed<std::chrono::seconds> parse_duration(std::string_view written) {
  static constexpr Kind kind{"a time", "\"4 min\" or \"1 h 30 min\"", time_units};
  return parse_as<std::chrono::seconds>(
      written, kind, [](const Sum& s) { return std::chrono::seconds(std::llround(s.size)); });
}
Parsed<CalendarSpan> parse_span(std::string_view written) {
  static constexpr Kind kind{"a span of days", "\"8 weeks\" or \"10 days\"", day_units};
  return parse_as<CalendarSpan>(written, kind, [](const Sum& sum) {
    constexpr double days_a_month = 30.44, whole_enough = 1e-6;
    const double months = std::floor(sum.months + whole_enough);
    CalendarSpan out(std::chrono::months(std::llround(months)));
    const double rest = std::max(sum.months - months, 0.0);
    out.days = std::chrono::days(std::llround(sum.size + rest * days_a_month));
    return out;
  });
}

Parsed<Dilution> parse_dilution(std::string_view written) {
  const auto fault = [&](std::string_view why) {
    return Parsed<Dilution>{
        {},
        fmt::format("expected a dilution such as \"10:1\", \"1:10\" or \"1 in 10\", found "
                    "\"{}\"{}",
                    written, why)};
  };
  const std::string_view text = trimmed(written);
  if (text == "neat" || text == "undiluted") return {Dilution{1, 1}, {}};
  Scanner scan(text);
  const auto first = scan.number();
  if (!first) return fault("");
  scan.skip_space();
  std::string_view rest = scan.rest();
  const bool in = rest.starts_with("in ");
  const bool to = rest.starts_with("to ");
  if (!in && !to && !rest.starts_with(':')) return fault("");
  Scanner after(rest.substr(in || to ? 3 : 1));
  after.skip_space();
  const auto second = after.number();
  after.skip_space();
  if (!second || !after.done()) return fault("");
  if (*first <= 0 || *second <= 0) return fault("; both numbers are more than zero");
  if (in) {
    if (*first != 1) return fault("; it is 1 in so many");
    if (*second < 1) return fault("; there is no less in all than the product");
    return {Dilution{1, *second}, {}};
  }
  if (*first != 1 && *second != 1) return fault("; one of the two is 1 part of product");
  const double water = *first == 1 ? *second : *first;
  return {Dilution{1, water + 1}, {}};
}
}  // namespace furnish
