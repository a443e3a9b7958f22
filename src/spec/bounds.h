#pragma once

#include <chrono>
#include <cstdint>
#include <string>

#include "base/calendar_span.h"
#include "base/date.h"
#include "base/length.h"
#include "base/measures.h"

namespace furnish {

enum class Edge : std::uint8_t { closed, open };

/// What a value may be; messages are made from it, so that a bound is written once.
template <typename T>
struct Range {
  T low, high;
  Edge at_low = Edge::closed, at_high = Edge::closed;
  constexpr bool holds(T value) const {
    return (at_low == Edge::closed ? value >= low : value > low) &&
           (at_high == Edge::closed ? value <= high : value < high);
  }
};

/// "at least 1 week and at most 104 weeks", "more than 0 kg and at most 150 kg".
std::string to_text(const Range<Length>&);
std::string to_text(const Range<Mass>&);
std::string to_text(const Range<Volume>&);
std::string to_text(const Range<std::chrono::seconds>&);
std::string to_text(const Range<std::chrono::days>&);
std::string to_text(const Range<CalendarSpan>&);
std::string to_text(const Range<double>&);
std::string to_text(const Range<Date>&);

/// Every bound of the reader. They catch slips (a unit, a digit, a point), not unusual dogs: common
/// sense, no source, unless one is named.
namespace bounds {
using namespace std::chrono_literals;
using std::chrono::days;
using std::chrono::seconds;

inline constexpr std::size_t text_length = 500;  ///< code points of one string
inline constexpr std::size_t quantity_length = 60;
inline constexpr std::size_t list_length = 50;

inline constexpr Range<Mass> weight{Mass(), Mass::kg(150), Edge::open};
inline constexpr Range<Date> day{Date(std::chrono::year(1990) / 1 / 1),
                                 Date(std::chrono::year(2199) / 12 / 31)};
inline constexpr Range<seconds> dwell{0s, 1h, Edge::open, Edge::open};
inline constexpr Range<seconds> rest_every{1min, 4h};
inline constexpr Range<seconds> visit_minutes{1min, 10h};
inline constexpr Range<double> minutes_number{1, 600};  ///< the same in plain minutes
inline constexpr Range<days> home_bath_every{days(1), days(26 * 7)};
inline constexpr Range<CalendarSpan> visit_every{days(7), days(104 * 7)};
inline constexpr Range<days> grown_out{days(7), days(104 * 7)};
inline constexpr Range<CalendarSpan> vaccination_wait{days(0), days(365)};
inline constexpr Range<CalendarSpan> vaccination_valid{days(1), days(20 * 365)};
inline constexpr Range<days> mix_keeps{days(0), days(365)};

inline constexpr Range<Length> coat{0_mm, 500_mm};
inline constexpr Range<Length> keep_under{1_mm, 500_mm};
inline constexpr Range<Length> comb{1_mm, 80_mm};
inline constexpr Range<Length> blade{0.1_mm, 60_mm};
inline constexpr Range<Length> reading_distance{200_mm, 10000_mm};
inline constexpr Range<Length> blend_step{1_mm, 100_mm};
inline constexpr Range<double> blend_ratio{1.05, 10};

inline constexpr Range<double> minutes_a_share{0, 600};
inline constexpr Range<double> spread{0, 1};
inline constexpr Range<Volume> bottle{Volume::ml(10), Volume::ml(20'000)};
inline constexpr Range<Volume> mix_per_m2{Volume::ml(50), Volume::ml(20'000)};
inline constexpr Range<double> mats{0, 4};       ///< 0 none to 4 felted to the skin
inline constexpr Range<double> focus{0, 1};      ///< share of a photo's width and height
inline constexpr double weakest_dilution = 500;  ///< parts in all
}  // namespace bounds
}  // namespace furnish
