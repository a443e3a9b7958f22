#include "spec/bounds.h"

#include <fmt/format.h>

#include "base/quantity.h"

namespace furnish {
namespace {
/// Messages go to a terminal, where a narrow space is often no character at all.
std::string plain(std::string text) {
  for (const std::string_view space : {narrow_space, std::string_view("\u00A0")}) {
    for (std::size_t at = text.find(space); at != std::string::npos; at = text.find(space)) {
      text.replace(at, space.size(), " ");
    }
  }
  return text;
}

std::string one(Length length) {
  return fmt::format("{:g} mm", length.in_mm());
}
std::string one(Mass mass) {
  return fmt::format("{:g} kg", mass.in_kg());
}
std::string one(Volume volume) {
  const double ml = volume.in_ml();
  return ml < 1000 ? fmt::format("{:g} ml", ml) : fmt::format("{:g} l", ml / 1000);
}
std::string one(std::chrono::seconds time) {
  return time.count() == 0 ? "0 min" : plain(to_text(time));
}
std::string one(std::chrono::days days) {
  const auto n = days.count();
  const auto counted = [](auto count, std::string_view unit) {
    return fmt::format("{} {}{}", count, unit, count == 1 ? "" : "s");
  };
  if (n != 0 && n % 365 == 0) return counted(n / 365, "year");
  if (n != 0 && n % 7 == 0) return counted(n / 7, "week");
  return counted(n, "day");
}
std::string one(const CalendarSpan& span) {
  return one(span.about());
}
std::string one(double number) {
  return fmt::format("{:g}", number);
}
std::string one(Date date) {
  return to_iso(date);
}

template <typename T>
std::string words(const Range<T>& range) {
  return fmt::format("{} {} and {} {}", range.at_low == Edge::closed ? "at least" : "more than",
                     one(range.low), range.at_high == Edge::closed ? "at most" : "under",
                     one(range.high));
}
}  // namespace

std::string to_text(const Range<Length>& range) {
  return words(range);
}
std::string to_text(const Range<Mass>& range) {
  return words(range);
}
std::string to_text(const Range<Volume>& range) {
  return words(range);
}
std::string to_text(const Range<std::chrono::seconds>& range) {
  return words(range);
}
std::string to_text(const Range<std::chrono::days>& range) {
  return words(range);
}
std::string to_text(const Range<CalendarSpan>& range) {
  return words(range);
}
std::string to_text(const Range<double>& range) {
  return words(range);
}
std::string to_text(const Range<Date>& range) {
  return fmt::format("from {} to {}", one(range.low), one(range.high));
}
}  // namespace furnish
