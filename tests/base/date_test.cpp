#include "base/calendar_span.h"

#include <unicode/gregocal.h>
#include <unicode/timezone.h>

#include <catch2/catch.hpp>

using namespace furnish;

namespace {
Date day(std::string_view iso) {
  const auto date = parse_date(iso);
  REQUIRE(date);
  return *date;
}
}  // namespace

TEST_CASE("days of the calendar agree with ICU for 400 years") {
  UErrorCode status = U_ZERO_ERROR;
  icu::GregorianCalendar calendar(*icu::TimeZone::getGMT(), status);
  // Gregorian throughout.
  calendar.setGregorianChange(-1.0e15, status);
  REQUIRE(U_SUCCESS(status));
  const Date first(std::chrono::year(1801) / 1 / 1), last(std::chrono::year(2200) / 12 / 31);
  int days = 0, wrong = 0;
  for (Date date = first; date <= last; date += std::chrono::days(1)) {
    calendar.setTime(static_cast<double>(date.time_since_epoch().count()) * 86'400'000.0, status);
    const int weekday = calendar.get(UCAL_DAY_OF_WEEK, status);  // Sunday is 1
    const bool same = static_cast<int>(std::chrono::weekday(date).c_encoding()) == weekday - 1 &&
                      static_cast<int>(std::chrono::year_month_day(date).year()) ==
                          calendar.get(UCAL_YEAR, status);
    const std::chrono::year_month_day ymd(date);
    const bool calendar_day =
        static_cast<int>(static_cast<unsigned>(ymd.day())) == calendar.get(UCAL_DATE, status) &&
        static_cast<int>(static_cast<unsigned>(ymd.month())) ==
            calendar.get(UCAL_MONTH, status) + 1;
    if (!same || !calendar_day) ++wrong;
    ++days;
  }
  CHECK(U_SUCCESS(status));
  CHECK(days == 146'097);  // 400 Gregorian years
  CHECK(wrong == 0);
}

TEST_CASE("leap years") {
  CHECK(make_date(2000, 2, 29));
  CHECK_FALSE(make_date(1900, 2, 29));
  CHECK_FALSE(make_date(2100, 2, 29));
  CHECK(make_date(2028, 2, 29));
}

TEST_CASE("a date has bounds") {
  CHECK_FALSE(make_date(1899, 12, 31));
  CHECK(make_date(1900, 1, 1));
  CHECK(make_date(2200, 12, 31));
  CHECK_FALSE(make_date(2201, 1, 1));
  CHECK_FALSE(make_date(2026, 13, 1));
  CHECK_FALSE(make_date(2026, 0, 1));
  CHECK_FALSE(make_date(2026, 4, 31));
}

TEST_CASE("reading and writing a date undo each other, and nothing else is a date") {
  for (Date date = day("1999-12-28"); date < day("2000-03-05"); date += std::chrono::days(1)) {
    CHECK(parse_date(to_iso(date)) == date);
  }
  CHECK(to_iso(*make_date(2026, 1, 2)) == "2026-01-02");
  for (const char* const no :
       {"", "2026-1-2", "2026-01-02 ", " 2026-01-02", "20260102", "2026/01/02", "2026-02-30",
        "abcd-ef-gh", "2026-01-0x", "-026-01-02", "2026--1-02", "+026-01-02"}) {
    INFO(no);
    CHECK_FALSE(parse_date(no));
  }
}

TEST_CASE("age in full years and months") {
  CHECK(full_years(day("2016-11-24"), day("2026-11-23")) == 9);
  CHECK(full_years(day("2016-11-24"), day("2026-11-24")) == 10);
  CHECK(full_years(day("2016-02-29"), day("2026-02-28")) == 9);
  CHECK(full_years(day("2016-02-29"), day("2026-03-01")) == 10);
  CHECK(full_years(day("2016-02-29"), day("2028-02-29")) == 12);
  CHECK(full_years(day("2026-11-24"), day("2026-11-23")) == -1);
  CHECK(full_months(day("2026-05-24"), day("2026-11-23")) == 5);
  CHECK(full_months(day("2026-05-24"), day("2026-11-24")) == 6);
  CHECK(full_months(day("2025-11-30"), day("2026-02-28")) == 2);
  CHECK(full_months(day("2025-11-30"), day("2026-03-01")) == 3);
}

// XML Schema Part 2 (W3C, 2004), appendix E "Adding durations to dateTimes": its table of examples,
// by their days.
TEST_CASE("spans of the calendar are added as XML Schema adds durations of ISO 8601") {
  using std::chrono::days;
  using std::chrono::months;
  CalendarSpan long_one(months(15));
  long_one.days = days(5);
  CHECK(to_iso(after(day("2000-01-12"), long_one)) == "2001-04-17");
  // The order matters: (2000-03-30 + P1D) + P1M, and (2000-03-30 + P1M) + P1D.
  CHECK(to_iso(after(after(day("2000-03-30"), days(1)), months(1))) == "2000-04-30");
  CHECK(to_iso(after(after(day("2000-03-30"), months(1)), days(1))) == "2000-05-01");
  CalendarSpan both(months(1));
  both.days = days(1);
  CHECK(to_iso(after(day("2000-03-30"), both)) == "2000-05-01");
  // A year is no number of days.
  CHECK(to_iso(after(day("2025-02-28"), months(12))) == "2026-02-28");
  CHECK(to_iso(after(day("2024-02-28"), months(12))) == "2025-02-28");
  CHECK(to_iso(after(day("2024-02-29"), months(12))) == "2025-02-28");
  CHECK(to_iso(after(day("2024-02-29"), months(48))) == "2028-02-29");
  CHECK(to_iso(after(day("2023-11-24"), months(36))) == "2026-11-24");
  CHECK(to_iso(after(day("2026-12-31"), months(2))) == "2027-02-28");
}

TEST_CASE("months are added as ICU adds them, whatever day it is") {
  UErrorCode status = U_ZERO_ERROR;
  icu::GregorianCalendar calendar(*icu::TimeZone::getGMT(), status);
  REQUIRE(U_SUCCESS(status));
  constexpr double milliseconds_a_day = 86'400'000.0;
  int wrong = 0;
  for (Date from = day("2023-01-01"); from < day("2029-01-01"); from += std::chrono::days(1)) {
    for (const int months : {1, 2, 3, 6, 11, 12, 18, 36}) {
      calendar.setTime(static_cast<double>(from.time_since_epoch().count()) * milliseconds_a_day,
                       status);
      calendar.add(UCAL_MONTH, months, status);
      const auto there = static_cast<long>(calendar.getTime(status) / milliseconds_a_day);
      if (after(from, std::chrono::months(months)).time_since_epoch().count() != there) ++wrong;
    }
  }
  REQUIRE(U_SUCCESS(status));
  CHECK(wrong == 0);
}
