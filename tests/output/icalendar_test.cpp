#include "output/icalendar.h"

#include <catch2/catch.hpp>

#include <libical/ical.h>

#include <memory>
#include <utility>

namespace furnish {
namespace {
struct FreeComponent {
  void operator()(icalcomponent* one) const { icalcomponent_free(one); }
};
using Component = std::unique_ptr<icalcomponent, FreeComponent>;

/// Another program's reading of a calendar.
Component parsed(const std::string& text) {
  Component out(icalparser_parse_string(text.c_str()));
  REQUIRE(out);
  INFO(text);
  CHECK(icalcomponent_count_errors(out.get()) == 0);
  CHECK(icalrestriction_check(out.get()) != 0);
  return out;
}

icalcomponent* event_of(const Component& calendar) {
  icalcomponent* const event =
      icalcomponent_get_first_component(calendar.get(), ICAL_VEVENT_COMPONENT);
  REQUIRE(event != nullptr);
  return event;
}

CalendarEvent visit(std::string summary = "Marlow") {
  CalendarEvent event;
  event.uid = "marlow-2027-01-19@furnish";
  event.day = *make_date(2027, 1, 19);
  event.stamp = *make_date(2026, 11, 24);
  event.summary = std::move(summary);
  event.description = "Brush before you come.\nBring the towel; no food, please.";
  event.location = "3 Lantern Street, Eastmere";
  event.alarm_days = 3;
  return event;
}
}  // namespace

TEST_CASE("another parser finds day, words and alarm of an event", "[icalendar]") {
  for (const std::string& summary :
       {std::string("Rex"), std::string("Commas, semicolons; back\\slash"),
        std::string("Zwei\nZeilen"),
        std::string("موعد مارلو القادم في الصالون، يوم الثلاثاء صباحًا في الساعة التاسعة"),
        std::string(
            "Gạo đến tiệm chải lông vào thứ ba ngày mười chín tháng một năm sau nhé bạn")}) {
    INFO(summary);
    const CalendarEvent made = visit(summary);
    const Component calendar = parsed(icalendar(made));
    icalcomponent* const event = event_of(calendar);
    CHECK(icalcomponent_get_summary(event) == summary);
    CHECK(icalcomponent_get_description(event) == made.description);
    CHECK(icalcomponent_get_location(event) == made.location);
    const icaltimetype start = icalcomponent_get_dtstart(event),
                       end = icalcomponent_get_dtend(event);
    CHECK(start.is_date);
    CHECK((start.year == 2027 && start.month == 1 && start.day == 19));
    CHECK((end.year == 2027 && end.month == 1 && end.day == 20));
    icalcomponent* const alarm = icalcomponent_get_first_component(event, ICAL_VALARM_COMPONENT);
    REQUIRE(alarm != nullptr);
    icalproperty* const trigger = icalcomponent_get_first_property(alarm, ICAL_TRIGGER_PROPERTY);
    REQUIRE(trigger != nullptr);
    CHECK(icaldurationtype_as_int(icalproperty_get_trigger(trigger).duration) ==
          -(3 * 24 - 9) * 3600);  // nine o'clock, three days before
  }
}

TEST_CASE("an event at an hour has that hour wherever it is read, and its alarm at nine",
          "[icalendar]") {
  for (const auto& [hour, minute] : {std::pair(14, 45), std::pair(8, 30)}) {
    CalendarEvent made = visit();
    made.at = std::chrono::hours(hour) + std::chrono::minutes(minute);
    made.sequence = 4;
    for (const std::string& text : {icalendar(made), short_icalendar(made)}) {
      const Component calendar = parsed(text);
      icalcomponent* const event = event_of(calendar);
      const icaltimetype start = icalcomponent_get_dtstart(event);
      CHECK_FALSE(start.is_date);
      CHECK(start.zone == nullptr);
      CHECK((start.day == 19 && start.hour == hour && start.minute == minute));
      CHECK(icalcomponent_get_sequence(event) == 4);
      icalcomponent* const alarm = icalcomponent_get_first_component(event, ICAL_VALARM_COMPONENT);
      if (alarm == nullptr) continue;
      icalproperty* const trigger = icalcomponent_get_first_property(alarm, ICAL_TRIGGER_PROPERTY);
      const icaltimetype rings = icaltime_add(start, icalproperty_get_trigger(trigger).duration);
      CHECK((rings.day == 16 && rings.hour == 9 && rings.minute == 0));
    }
  }
}

TEST_CASE("the short event is the same appointment", "[icalendar]") {
  const std::string text = short_icalendar(visit());
  CHECK(text.size() < icalendar(visit()).size());
  const Component calendar = parsed(text);
  CHECK(icalcomponent_get_dtstart(event_of(calendar)).day == 19);
  CHECK(std::string_view(icalcomponent_get_uid(event_of(calendar))) == "marlow-2027-01-19@furnish");
}

TEST_CASE("lines fold at 75 octets and never inside a character", "[icalendar]") {
  std::string line = "SUMMARY:";
  for (int i = 0; i < 60; ++i) line += "é€";
  const std::string folded = calendar_line(line);
  std::string joined;
  for (std::size_t at = 0; at < folded.size();) {
    const std::size_t end = folded.find("\r\n", at);
    REQUIRE(end != std::string::npos);
    const std::string one = folded.substr(at, end - at);
    CHECK(one.size() <= 75);
    const std::size_t skip = at == 0 ? 0 : 1;
    if (skip == 1) CHECK(one.front() == ' ');
    REQUIRE(one.size() > skip);
    CHECK((static_cast<unsigned char>(one[skip]) & 0xC0) != 0x80);
    joined += one.substr(skip);
    at = end + 2;
  }
  CHECK(joined == line);
}

// RFC 5545, 3.3.11 gives this value, 3.6.1 this all-day event that ends on 8 July.
TEST_CASE("examples of RFC 5545", "[icalendar]") {
  CHECK(calendar_text("Project XYZ Final Review\nConference Room - 3B\nCome Prepared.") ==
        "Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.");
  CalendarEvent event = visit("Festival");
  event.day = *make_date(2007, 7, 8);
  const std::string text = icalendar(event);
  CHECK(text.find("DTEND;VALUE=DATE:20070709\r\n") != std::string::npos);
  // 3.1: a long line may be split between any two characters by CRLF and a space.
  const Component calendar(icalparser_parse_string(
      "BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nDESCRIPTION:This is a lo\r\n ng description\r\n"
      "  that exists on a long line.\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n"));
  REQUIRE(calendar);
  CHECK(std::string_view(icalcomponent_get_description(event_of(calendar))) ==
        "This is a long description that exists on a long line.");
}
}  // namespace furnish
