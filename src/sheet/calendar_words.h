#pragma once

#include <array>
#include <chrono>
#include <string>

namespace furnish {

/// How a reader's language names the days and months of a calendar, and with which day its weeks
/// begin (ICU's data).
struct CalendarWords {
  std::array<std::string, 7> weekdays, narrow_weekdays;  ///< Sunday first
  std::array<std::string, 12> months;                    ///< short: "Nov"
  std::chrono::weekday first = std::chrono::Monday;
};
/// `language` is BCP 47; one that ICU does not know is taken for English.
CalendarWords calendar_words(const std::string& language);
}  // namespace furnish
