#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/date.h"

namespace furnish {

/// One all-day event of a calendar (RFC 5545).
struct CalendarEvent {
  std::string uid;  ///< the same for the same appointment, so that a calendar replaces it
  Date day;
  Date stamp;           ///< when it was made, taken at midnight UTC
  std::string summary;  ///< any text: commas, semicolons, backslashes and line ends are escaped
  std::string description, location;  ///< left out where empty
  std::optional<int> alarm_days;      ///< so many days before, a reminder; none if empty
};

/// A whole calendar with one event: lines end CRLF and are folded at 75 octets, never inside a
/// character (RFC 5545, 3.1); the end of an all-day event is the day after (3.6.1).
std::string icalendar(const CalendarEvent&);
/// The same in as few bytes as a phone's reader takes from a code: no description, no alarm.
std::string short_icalendar(const CalendarEvent&);

/// TEXT as RFC 5545, 3.3.11 writes it: `\\`, `\;`, `\,` and `\n`; other controls but the tab are
/// left out.
std::string calendar_text(std::string_view);
/// One content line, folded and ended.
std::string calendar_line(std::string_view);
}  // namespace furnish
