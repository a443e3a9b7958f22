#include "sheet/reader_locale.h"

#include <catch2/catch.hpp>

#include <cstdlib>

#include "sheet/desk.h"

namespace furnish {
namespace {
Date day(const char* iso) {
  return parse_date(iso).value();
}
}  // namespace

// Forms of dates, times and lists: Unicode CLDR, the release that Debian's ICU carries, as printed
// at cldr.unicode.org for each locale (from memory, then held here).
TEST_CASE("dates are written as the reader writes them", "[locale]") {
  const ReaderLocale british("en-GB", Units::metric), american("en-US", Units::us),
      german("de", Units::metric), japanese("ja", Units::metric);
  CHECK(british.long_date(day("2026-11-24")) == "24 November 2026");
  CHECK(american.long_date(day("2026-11-24")) == "November 24, 2026");
  CHECK(german.long_date(day("2026-11-24")) == "24.\u00A0November 2026");
  CHECK(japanese.long_date(day("2026-11-24")) == "2026年11月24日");
  CHECK(british.long_date(day("2024-02-29")) == "29 February 2024");
  CHECK(british.long_date(day("1900-01-01")) == "1 January 1900");
}

TEST_CASE("a due day has its weekday, and its year only if it is another one", "[locale]") {
  const ReaderLocale british("en-GB", Units::metric), american("en-US", Units::us);
  const Date today = day("2026-11-24");
  // 19 January 2027 is a Tuesday: `cal 1 2027`.
  CHECK(british.day_and_month(day("2027-01-19"), today) == "Tuesday, 19 January 2027");
  CHECK(british.day_and_month(day("2026-12-25"), today) == "Friday, 25 December");
  CHECK(american.day_and_month(day("2026-12-25"), today) == "Friday, December 25");
}

// From memory, of native usage: the first of a month is an ordinal in French and in Brazil; Spanish
// has no comma after an article; Vietnamese says the day and the year by name.
TEST_CASE("dates are whole where a sentence takes them", "[locale]") {
  const ReaderLocale french("fr", Units::metric), spanish("es-MX", Units::metric),
      brazilian("pt", Units::metric), portuguese("pt-PT", Units::metric),
      vietnamese("vi", Units::metric);
  const Date today = day("2026-11-24");
  CHECK(french.day_and_month(day("2026-12-01"), today) == "mardi 1er décembre");
  CHECK(french.day_and_month(day("2026-12-11"), today) == "vendredi 11 décembre");
  CHECK(french.long_date(day("2026-09-01")) == "1er septembre 2026");
  CHECK(french.short_day(day("2026-12-01"), today) == "1er déc.");
  CHECK(spanish.day_and_month(day("2026-12-22"), today) == "martes 22 de diciembre");
  CHECK(spanish.day_and_month(day("2027-01-19"), today) == "martes 19 de enero de 2027");
  CHECK(brazilian.long_date(day("2026-09-01")) == "1º de setembro de 2026");
  CHECK(brazilian.long_date(day("2026-09-02")) == "2 de setembro de 2026");
  CHECK(portuguese.long_date(day("2026-09-01")) == "1 de setembro de 2026");
  CHECK(vietnamese.long_date(day("2026-11-24")) == "24 tháng 11 năm 2026");
  CHECK(vietnamese.day_and_month(day("2026-12-22"), today) == "Thứ Ba, ngày 22 tháng 12");
}

TEST_CASE("a time stays with its mark", "[locale]") {
  const ReaderLocale french("fr", Units::metric), arabic("ar", Units::metric);
  using namespace std::chrono_literals;
  CHECK(french.time(11h + 15min) == "11\u00A0h\u00A015");
  CHECK(arabic.time(11h + 45min) == "11:45\u00A0ص");
}

TEST_CASE("times are 24 or 12 hours, whatever the zone of the machine", "[locale]") {
  ::setenv("TZ", "Pacific/Kiritimati", 1);
  const ReaderLocale british("en-GB", Units::metric), american("en-US", Units::us);
  using namespace std::chrono_literals;
  CHECK(british.time(11h + 45min) == "11:45");
  CHECK(british.time(0min) == "00:00");
  CHECK(test::without_space(american.time(17h + 5min)) == "5:05PM");
  CHECK(test::without_space(american.time(0min)) == "12:00AM");
  CHECK(british.long_date(day("2026-01-01")) == "1 January 2026");
}

TEST_CASE("lists end with the reader's word", "[locale]") {
  const ReaderLocale british("en-GB", Units::metric), american("en-US", Units::us),
      french("fr", Units::metric);
  CHECK(british.list({}) == "");
  CHECK(british.list({"lead"}) == "lead");
  CHECK(british.list({"collar", "lead"}) == "collar and lead");
  CHECK(british.list({"collar", "lead", "towel"}) == "collar, lead and towel");
  CHECK(american.list({"collar", "lead", "towel"}) == "collar, lead, and towel");
  CHECK(french.list({"collier", "laisse"}) == "collier et laisse");
  CHECK(british.either({"Priya", "Tom"}) == "Priya or Tom");
}

TEST_CASE("a language that nobody knows is read as English", "[locale]") {
  const ReaderLocale odd("xx-invalid-!!", Units::metric);
  CHECK(odd.list({"a", "b"}) == "a and b");
  CHECK(odd.language() == "xx-invalid-!!");
}
}  // namespace furnish
