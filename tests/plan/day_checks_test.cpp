#include "plan/day_checks.h"

#include <fmt/format.h>

#include "plan/made.h"

using namespace furnish;
using namespace furnish::made;

namespace {
using std::chrono::hours;
using std::chrono::minutes;

Booking booked(std::string pet, minutes at, std::optional<minutes> collect = {},
               std::string groomer = {}, std::uint32_t line_number = 1) {
  Booking out = booking("2026-11-24", at);
  out.pet = {std::move(pet), line(line_number)};
  out.collect = collect;
  out.groomer = std::move(groomer);
  out.span = line(line_number);
  return out;
}

std::vector<DayWarning> of(const std::vector<Booking>& bookings, const Salon& shop = salon()) {
  Day day{made::day("2026-11-24"), bookings, line(1), {}};
  const std::vector<std::string> pets{"marlow", "juniper", "gao"};
  const std::map<std::string, Duration> expected{
      {"marlow", {minutes(90), minutes(80), minutes(100), 3}},
      {"juniper", {minutes(60), minutes(50), minutes(70), 3}}};
  return day_warnings(shop, day, pets, expected);
}

std::vector<DayFault> faults(const std::vector<Booking>& bookings) {
  std::vector<DayFault> out;
  for (const DayWarning& one : of(bookings)) out.push_back(one.fault);
  return out;
}
}  // namespace

TEST_CASE("a day that can be done has no warning") {
  CHECK(faults({}).empty());
  CHECK(faults({booked("marlow", hours(9), minutes(630), "Ines"),
                booked("juniper", minutes(630), {}, "Ines"),
                booked("gao", hours(9), hours(17), "Bo"), booked("marlow", hours(14))})
            .empty());
}

TEST_CASE("booked shorter than the work is expected to take") {
  CHECK(faults({booked("marlow", hours(9), minutes(630))}).empty());  // 90 minutes, to the minute
  const auto warnings = of({booked("marlow", hours(9), minutes(629), {}, 7)});
  REQUIRE(warnings.size() == 1);
  CHECK(warnings[0].fault == DayFault::short_time);
  CHECK(warnings[0].pets == std::vector<std::string>{"marlow"});
  CHECK(warnings[0].span.begin.line == 7);
  // Nobody knows how long it takes.
  CHECK(faults({booked("gao", hours(9), minutes(541))}).empty());
}

TEST_CASE("booked on a day on which the salon is closed") {
  Salon shop = salon();
  shop.closed = {std::chrono::Tuesday};
  const auto warnings = of({booked("marlow", hours(9)), booked("gao", hours(12))}, shop);
  REQUIRE(warnings.size() == 1);
  CHECK(warnings[0].fault == DayFault::closed_day);
  CHECK(warnings[0].pets == std::vector<std::string>{"marlow", "gao"});
  CHECK(of({}, shop).empty());
}

TEST_CASE("a pet, or a groomer, booked twice at once") {
  CHECK(faults({booked("marlow", hours(9), hours(12)), booked("marlow", hours(11))}) ==
        std::vector{DayFault::pet_twice});
  const auto warnings = of({booked("marlow", hours(9), hours(12), "Ines", 3),
                            booked("juniper", minutes(629), {}, " ines", 9)});
  REQUIRE(warnings.size() == 1);
  CHECK(warnings[0].fault == DayFault::groomer_twice);
  CHECK(warnings[0].span.begin.line == 9);
  CHECK(warnings[0].other.begin.line == 3);
  CHECK(warnings[0].pets == std::vector<std::string>{"marlow", "juniper"});
  // Marlow waits for his owner while she works on: 90 minutes from nine.
  CHECK(faults({booked("marlow", hours(9), hours(12), "Ines"),
                booked("juniper", minutes(630), {}, "Ines")})
            .empty());
  // Nobody knows how long Gao takes: until he is collected, else the same minute alone.
  CHECK(
      faults({booked("gao", hours(9), hours(12), "Ines"), booked("juniper", hours(11), {}, "Ines")})
          .size() == 1);
  CHECK(faults({booked("gao", hours(9), {}, "Ines"), booked("juniper", hours(9), {}, "Ines")})
            .size() == 1);
  CHECK(faults({booked("gao", hours(9), {}, "Ines"), booked("juniper", minutes(541), {}, "Ines")})
            .empty());
}

TEST_CASE("booked for a pet that is not there") {
  const auto warnings = of({booked("marlo", hours(9), {}, {}, 4)});
  REQUIRE(warnings.size() == 1);
  CHECK(warnings[0].fault == DayFault::no_pet);
  CHECK(warnings[0].hint == "did you mean 'marlow'?");
  DiagnosticSink sink;
  report(warnings, sink);
  report(of({booked("marlow", hours(9), minutes(541))}), sink);
  REQUIRE(sink.all().size() == 2);
  CHECK(sink.all()[0].severity == Severity::error);
  CHECK(sink.all()[1].severity == Severity::warning);
  CHECK(sink.all()[1].code == "booked-short");
}
