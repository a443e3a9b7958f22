#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

namespace furnish {

/// A day of the proleptic Gregorian calendar, without time or zone; arithmetic in
/// std::chrono::days.
using Date = std::chrono::sys_days;

/// Empty if there is no such day, or the year is outside 1900 to 2200, which is a slip of the
/// finger.
std::optional<Date> make_date(int year, unsigned month, unsigned day);

/// "2026-11-24", nothing around it; empty as make_date() is.
std::optional<Date> parse_date(std::string_view iso);
/// The inverse of parse_date().
std::string to_iso(Date);

/// Whole years from `born` to `day`; someone born on 29 February turns a year older on 1 March in
/// common years. Negative before birth.
int full_years(Date born, Date day);
/// Whole months, in the same manner.
int full_months(Date born, Date day);

/// Minutes after midnight.
using TimeOfDay = std::chrono::minutes;
/// "9:30", "09:30", "09:30:00", "2:30 pm", "11am"; empty if there is no such time, or seconds are
/// given.
std::optional<TimeOfDay> parse_time_of_day(std::string_view);
}  // namespace furnish
