#include "output/icalendar.h"

#include <fmt/format.h>

#include <algorithm>

namespace furnish {
namespace {
/// "20261124".
std::string basic(Date day) {
  std::string iso = to_iso(day);
  std::erase(iso, '-');
  return iso;
}

bool goes_on(char byte) {
  return (static_cast<unsigned char>(byte) & 0xC0) == 0x80;
}

std::string property(std::string_view name, std::string_view text) {
  return text.empty() ? std::string()
                      : calendar_line(fmt::format("{}:{}", name, calendar_text(text)));
}

std::string start(const CalendarEvent& one, bool whole) {
  if (one.at) {
    const auto minutes = one.at->count();
    return calendar_line(
        fmt::format("DTSTART:{}T{:02}{:02}00", basic(one.day), minutes / 60, minutes % 60));
  }
  const std::string begins = calendar_line(fmt::format("DTSTART;VALUE=DATE:{}", basic(one.day)));
  // A day that has no end is one day long (RFC 5545, 3.6.1).
  if (!whole) return begins;
  return begins +
         calendar_line(fmt::format("DTEND;VALUE=DATE:{}", basic(one.day + std::chrono::days(1))));
}

/// From the start of the event back to nine o'clock, so many days before: a day begins at midnight,
/// when nobody wants to be woken.
std::string alarm_trigger(const CalendarEvent& one) {
  constexpr std::chrono::minutes nine = std::chrono::hours(9);
  constexpr int day = 24 * 60;
  const auto before =
      *one.alarm_days * day + static_cast<int>((one.at.value_or(TimeOfDay{}) - nine).count());
  const int minutes = before < 0 ? -before : before;
  return fmt::format("TRIGGER:{}P{}DT{}H{}M", before < 0 ? "" : "-", minutes / day,
                     minutes % day / 60, minutes % 60);
}

std::string event(const CalendarEvent& one, bool whole) {
  std::string out =
      calendar_line("BEGIN:VCALENDAR") + calendar_line("VERSION:2.0") +
      calendar_line(whole ? "PRODID:-//furnish//furnish//EN" : "PRODID:furnish") +
      calendar_line("BEGIN:VEVENT") + property("UID", one.uid) +
      calendar_line(fmt::format("DTSTAMP:{}T000000Z", basic(one.stamp))) +
      (one.sequence > 0 ? calendar_line(fmt::format("SEQUENCE:{}", one.sequence)) : "") +
      start(one, whole) + property("SUMMARY", one.summary);
  if (whole) {
    out += property("LOCATION", one.location);
    out += property("DESCRIPTION", one.description);
    out += calendar_line("TRANSP:TRANSPARENT");
    if (one.alarm_days) {
      out += calendar_line("BEGIN:VALARM") + calendar_line("ACTION:DISPLAY") +
             property("DESCRIPTION", one.summary) + calendar_line(alarm_trigger(one)) +
             calendar_line("END:VALARM");
    }
  }
  return out + calendar_line("END:VEVENT") + calendar_line("END:VCALENDAR");
}
}  // namespace

std::string calendar_text(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (c == '\r') {
      // CRLF and a lone CR are one line end.
      if (i + 1 >= text.size() || text[i + 1] != '\n') out += "\\n";
    } else if (c == '\n') {
      out += "\\n";
    } else if (c == '\\' || c == ';' || c == ',') {
      out += '\\';
      out += c;
    } else if (c == '\t' || static_cast<unsigned char>(c) >= 0x20) {
      if (c != 0x7F) out += c;
    }
  }
  return out;
}

std::string calendar_line(std::string_view line) {
  constexpr std::size_t most = 75;
  std::string out;
  std::size_t room = most;
  while (line.size() > room) {
    std::size_t cut = room;
    while (cut > 0 && goes_on(line[cut])) --cut;
    out += line.substr(0, cut);
    out += "\r\n ";
    line.remove_prefix(cut);
    room = most - 1;  // the space that begins a folded line counts
  }
  out += line;
  out += "\r\n";
  return out;
}

std::string icalendar(const CalendarEvent& one) {
  return event(one, true);
}

std::string short_icalendar(const CalendarEvent& one) {
  return event(one, false);
}
}  // namespace furnish
