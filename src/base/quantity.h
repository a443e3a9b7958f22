#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

#include "base/amount.h"
#include "base/calendar_span.h"
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
/// point is a fault that says so. Nothing is negative. Units:
///   length mm cm in · mass kg g lb oz · volume ml l, "fl oz" and gal (US) · time h min s
///   span days weeks months years (singular too; months and years are the calendar's);
/// written out or as people cut them short too ("5 minutes", "10 wks", "19.4 lbs", "1/2 inch"),
/// letters of either case.
Parsed<Length> parse_length(std::string_view);
Parsed<Mass> parse_mass(std::string_view);
Parsed<Volume> parse_volume(std::string_view);
Parsed<std::chrono::seconds> parse_duration(std::string_view);
/// What is not a whole month, of "1.5 months", is days at 30.44 a month.
Parsed<CalendarSpan> parse_span(std::string_view);
/// "10:1", "1:10", "1 to 10", "1 in 10"; "neat" or "undiluted".
Parsed<Dilution> parse_dilution(std::string_view);
}  // namespace furnish
