#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/date.h"

namespace furnish {

/// One event of a calendar (RFC 5545): at an hour of the place where it is read, else all day.
struct CalendarEvent {
  std::string uid;  ///< the same for the same appointment, so that a calendar replaces it
  Date day;
  std::optional<TimeOfDay> at{};  ///< the hour, if it is known: without a zone ("floating")
  Date stamp;                     ///< when it was made, taken at midnight UTC
  int sequence = 0;               ///< not less in a later version of the same event
  std::string summary;  ///< any text: commas, semicolons, backslashes and line ends are escaped
  std::string description, location;  ///< left out where empty
  std::optional<int> alarm_days;      ///< so many days before at 9:00, a reminder; none if empty
};

/// A whole calendar with one event: lines end CRLF and are folded at 75 octets, never inside a
/// character (RFC 5545, 3.1); the end of an all-day event is the day after (3.6.1).
/// An event at an hour has no end: nobody knows how long the visit takes.
std::string icalendar(const CalendarEvent&);
/// The same in as few bytes as a phone's reader takes from a code, as fewer are larger there: no
/// place, description or alarm, and no end of a day.
std::string short_icalendar(const CalendarEvent&);

/// TEXT as RFC 5545, 3.3.11 writes it: `\\`, `\;`, `\,` and `\n`; other controls but the tab are
/// left out.
std::string calendar_text(std::string_view);
/// One content line, folded and ended.
std::string calendar_line(std::string_view);
}  // namespace furnish
