#include "plan/next_visit.h"

#include "plan/made.h"

using namespace furnish;
using namespace furnish::made;

namespace {
Pet every(int weeks, std::optional<Coat> coat = std::nullopt) {
  Pet dog = pet(coat);
  dog.visit_every = Located<CalendarSpan>{std::chrono::days(7 * weeks), {}};
  return dog;
}

/// A salon that lets lengths move the next visit.
Salon shortening() {
  Salon shop = salon();
  shop.shorten_visits = true;
  return shop;
}

std::optional<NextVisit> next_of(const Pet& dog, const std::vector<Visit>& visits,
                                 std::string_view today = "2026-11-24",
                                 const Salon& shop = salon()) {
  return plan(shop, dog, visits, today).plan.next_visit;
}
}  // namespace

// Every 8 weeks from 2026-01-07, computed by the rules of ISO 8601.
TEST_CASE("every eight weeks") {
  std::string date = "2026-01-07";
  for (const std::string expected :
       {"2026-03-04", "2026-04-29", "2026-06-24", "2026-08-19", "2026-10-14", "2026-12-09"}) {
    CHECK(to_iso(next_of(every(8), {visit(date)}, date)->date) == expected);
    date = expected;
  }
}

TEST_CASE("every two months is the same day of the month") {
  Pet dog = pet();
  dog.visit_every = Located<CalendarSpan>{std::chrono::months(2), {}};
  CHECK(to_iso(next_of(dog, {visit("2026-10-24")})->date) == "2026-12-24");
  CHECK(to_iso(next_of(dog, {visit("2026-12-31")}, "2026-12-31")->date) == "2027-02-28");
}

TEST_CASE("a day that may be one of the salon's closed days is not told as sure") {
  Salon shop = salon();
  shop.unread = {SalonPart::closed};
  const auto plan_of = [&](const std::vector<Visit>& visits, std::vector<Booking> known) {
    DiagnosticSink sink;
    return make_plan(shop, every(8), visits, {std::move(known), {}}, day("2026-11-24"), sink);
  };
  const Plan open = plan_of({visit("2026-10-07")}, {});
  CHECK_FALSE(open.next_visit);
  REQUIRE(open.unless_booked);
  CHECK(open.unless_booked->date == day("2026-12-02"));
  CHECK(open.salon_unread == std::vector<std::string>{"[salon] closed"});
  CHECK(plan_of({visit("2026-10-07")}, {booking("2026-12-01")}).next_visit);
  Visit agreed = visit("2026-10-07");
  agreed.next = Located<Date>{day("2026-12-03"), {}};
  CHECK(plan_of({agreed}, {}).next_visit);
}

TEST_CASE("a day of which not all bookings can be read leaves open what may come later") {
  const std::vector<Visit> visits{visit("2026-10-07")};  // due on 2 December
  const auto plan_of = [&](std::vector<Booking> known, std::vector<std::string_view> unread) {
    PetBookings bookings{std::move(known), {}};
    for (const std::string_view iso : unread) bookings.unread.push_back(day(iso));
    DiagnosticSink sink;
    return make_plan(salon(), every(8), visits, bookings, day("2026-11-24"), sink);
  };
  const Plan open = plan_of({}, {"2026-12-10"});  // it may be that day instead of the second
  CHECK_FALSE(open.next_visit);
  REQUIRE(open.unless_booked);
  CHECK(open.unless_booked->date == day("2026-12-02"));
  CHECK(open.unread_day == day("2026-12-10"));
  // A booking before it is the first whatever stands there.
  const Plan sure = plan_of({booking("2026-12-01")}, {"2026-12-10"});
  REQUIRE(sure.next_visit);
  CHECK(sure.next_visit->date == day("2026-12-01"));
  CHECK_FALSE(sure.unread_day);
  CHECK(plan_of({booking("2026-12-10")}, {"2026-12-10"}).next_visit);
  CHECK_FALSE(plan_of({booking("2026-12-11")}, {"2026-12-10"}).next_visit);
  // Of one that is booked today only what follows is open.
  const Plan today = plan_of({booking("2026-11-24"), booking("2027-01-05")}, {"2026-12-10"});
  REQUIRE(today.next_visit);
  CHECK(today.next_visit->date == day("2026-11-24"));
  CHECK_FALSE(today.next_visit->then);
  CHECK(today.unread_day == day("2026-12-10"));
  REQUIRE(today.after_today);
  CHECK_FALSE(today.after_today->next);
  const Plan then = plan_of({booking("2026-11-24"), booking("2026-12-01")}, {"2026-12-10"});
  REQUIRE(then.next_visit->then);
  CHECK_FALSE(then.unread_day);
  // What is past is nobody's matter.
  CHECK(plan_of({}, {"2026-11-23"}).next_visit->date == day("2026-12-02"));
}

// The worked example of RFC 5545, 3.8.5.3: every other week from 1997-09-02.
TEST_CASE("every fortnight") {
  std::string date = "1997-09-02";
  for (const std::string expected : {"1997-09-16", "1997-09-30", "1997-10-14"}) {
    CHECK(to_iso(next_of(every(2), {visit(date)}, date)->date) == expected);
    date = expected;
  }
}

TEST_CASE("whose interval, and from when") {
  const auto owners = next_of(every(8), {visit("2026-11-24")});
  CHECK(owners->reason == DueReason::owner_interval);
  CHECK(owners->last == day("2026-11-24"));
  const auto coats = next_of(pet(Coat::curly), {visit("2026-11-24")});
  CHECK(coats->reason == DueReason::coat_interval);
  CHECK(to_iso(coats->date) == "2026-12-29");  // 4 to 6 weeks (common practice): 5
  CHECK_FALSE(next_of(pet(), {visit("2026-11-24")}));
}

TEST_CASE("a pet without a visit on file is due now, and that is the reason") {
  Salon shut = salon();
  shut.closed = {std::chrono::Tuesday};  // today: it is here, or is told so
  for (const Pet& dog : {every(8), pet(Coat::curly), pet()}) {
    const auto first = next_of(dog, {}, "2026-11-24", shut);
    REQUIRE(first);
    CHECK(first->reason == DueReason::no_visit);
    CHECK(first->date == day("2026-11-24"));
    CHECK(first->overdue_days == 0);
    CHECK_FALSE(first->last);
  }
  const auto booked = plan(salon(), every(8), {}, "2026-11-24", {booking("2026-12-03")}).plan;
  CHECK(booked.next_visit->reason == DueReason::booked);
}

TEST_CASE("a booking is the date, whatever was agreed or usual") {
  Visit last = visit("2026-09-29");
  const std::vector<Booking> bookings{booking("2027-01-12"), booking("2026-12-03"),
                                      booking("2026-11-24"), booking("2026-10-06")};
  const auto made = plan(salon(), every(8), {last}, "2026-11-25", bookings).plan.next_visit;
  CHECK(made->reason == DueReason::booked);
  CHECK(made->date == day("2026-12-03"));
  CHECK(made->at == std::chrono::hours(9));
  CHECK(made->overdue_days == 0);  // eight weeks were over the day before
  last.next = Located<Date>{day("2026-12-01"), line(3)};
  CHECK(plan(salon(), every(8), {last}, "2026-11-25", bookings).plan.next_visit->date ==
        day("2026-12-03"));
  // One of the past is not.
  const std::vector<Booking> over{booking("2026-11-24"), booking("2026-10-06")};
  CHECK(plan(salon(), every(8), {last}, "2026-11-25", over).plan.next_visit->reason ==
        DueReason::agreed);
}

TEST_CASE("a booking of today is the next visit until that visit is on file") {
  Visit last = visit("2026-09-29");
  last.next = Located<Date>{day("2026-11-24"), line(3)};
  std::vector<Booking> bookings{booking("2026-11-24")};
  const auto next = [&](const std::vector<Visit>& visits) {
    return plan(salon(), every(8), visits, "2026-11-24", bookings).plan.next_visit;
  };
  const auto agrees = next({last});
  CHECK(agrees->reason == DueReason::booked);
  CHECK(agrees->date == day("2026-11-24"));
  CHECK(agrees->at == std::chrono::hours(9));
  CHECK_FALSE(agrees->then);
  last.next = Located<Date>{day("2026-12-08"), line(3)};  // it comes earlier than agreed
  CHECK(next({last})->date == day("2026-11-24"));
  CHECK(next({})->reason == DueReason::booked);  // never here, and booked
  CHECK(next({last, visit("2026-11-24")})->reason == DueReason::owner_interval);

  bookings.push_back(booking("2027-01-12"));
  bookings.push_back(booking("2026-12-03"));
  CHECK(next({last})->date == day("2026-11-24"));
  REQUIRE(next({last})->then);
  CHECK(next({last})->then->date == day("2026-12-03"));
  CHECK(next({last})->then->at == std::chrono::hours(9));
  const auto after = next({last, visit("2026-11-24")});
  CHECK(after->date == day("2026-12-03"));
  CHECK_FALSE(after->then);

  DiagnosticSink unheard;
  const auto over = plan_after_today(salon(), every(8), std::vector{last}, {bookings, {}},
                                     day("2026-11-24"), unheard);
  CHECK(over.next_visit->date == day("2026-12-03"));
}

TEST_CASE("a limit of the owner and a coat that mats advise, and move nothing") {
  Pet dog = every(8, Coat::drop);
  dog.trim = {part("ears", shears(Shears::straight), Lay::with, 20_mm),
              part("back", shears(Shears::straight), Lay::with, 34_mm)};
  dog.preferences.keep_under = {{at("ears"), 29_mm, line(7)}};
  const auto made = plan(salon(), dog, {visit("2026-11-24")}).plan;
  CHECK(made.next_visit->reason == DueReason::owner_interval);
  CHECK(made.next_visit->date == day("2027-01-19"));
  REQUIRE(made.limits.size() == 3);
  // 9 mm at 0.45 a day are 20 days, 16 mm are 35.6, 30 mm are 66.7 (rates: common practice).
  CHECK(made.limits[0].kind == LimitKind::keep_under);
  CHECK(made.limits[0].place == at("ears"));
  CHECK(made.limits[0].limit == 29_mm);
  CHECK(made.limits[0].passed == day("2026-12-15"));
  CHECK(made.limits[1].kind == LimitKind::mat_prone);
  CHECK(made.limits[1].place == at("back"));
  CHECK(made.limits[1].passed == day("2026-12-30"));
  CHECK(made.limits[2].passed == day("2027-01-30"));
}

TEST_CASE("overdue from the day after") {
  const std::vector<Visit> last{visit("2026-09-29")};
  CHECK(next_of(every(8), last, "2026-11-24")->overdue_days == 0);
  CHECK(next_of(every(8), last, "2026-11-25")->overdue_days == 1);
  CHECK(next_of(every(8), last, "2026-12-24")->overdue_days == 30);
}

TEST_CASE("closed days move it earlier, never later") {
  Salon shop = salon();
  shop.closed = {std::chrono::Sunday, std::chrono::Monday};
  // 2027-01-18 is a Monday, so the Saturday before.
  const auto moved = next_of(every(8), {visit("2026-11-23")}, "2026-11-24", shop);
  CHECK(to_iso(moved->wanted) == "2027-01-18");
  CHECK(to_iso(moved->date) == "2027-01-16");
  for (int i = 0; i < 7; ++i) shop.closed.emplace_back(static_cast<unsigned>(i));
  CHECK(next_of(every(8), {visit("2026-11-23")}, "2026-11-24", shop)->date == day("2027-01-18"));
}

TEST_CASE("on every day of a year it is open and not later than wanted") {
  Salon shop = salon();
  shop.closed = {std::chrono::Tuesday, std::chrono::Wednesday, std::chrono::Saturday};
  for (int i = 0; i < 366; ++i) {
    const std::string date = to_iso(day("2026-01-01") + std::chrono::days(i));
    const auto next = next_of(every(6), {visit(date)}, date, shop);
    CHECK(next->date <= next->wanted);
    CHECK(next->wanted - next->date < std::chrono::days(7));
    const std::chrono::weekday on(next->date);
    CHECK(on != std::chrono::Tuesday);
    CHECK(on != std::chrono::Wednesday);
    CHECK(on != std::chrono::Saturday);
  }
}

TEST_CASE("a limit of the owner shortens it where the salon says so") {
  Pet dog = every(8, Coat::drop);
  dog.trim = {part("ears", shears(Shears::straight), Lay::with, 20_mm)};
  dog.preferences.keep_under = {{at("ears"), 29_mm, line(7)}};
  const auto next =
      next_of(dog, {visit("2026-11-24")}, "2026-11-24", shortening());  // 9 mm at 0.45: 20 days
  CHECK(next->reason == DueReason::keep_under);
  CHECK(next->place == at("ears"));
  CHECK(next->limit == 29_mm);
  CHECK(next->date == day("2026-12-14"));
  dog.preferences.keep_under[0].length = 60_mm;
  CHECK(next_of(dog, {visit("2026-11-24")}, "2026-11-24", shortening())->reason ==
        DueReason::owner_interval);
  dog.preferences.keep_under[0].length = 21_mm;  // two days: a week at least
  CHECK(next_of(dog, {visit("2026-11-24")}, "2026-11-24", shortening())->date == day("2026-12-01"));
  dog.preferences.keep_under[0].length = 19_mm;
  const auto made = plan(shortening(), dog, {visit("2026-11-24")});
  CHECK(made.says("keep-under-unreachable"));
  CHECK(made.plan.next_visit->reason == DueReason::owner_interval);
}

TEST_CASE("a coat that would mat shortens it where the salon says so, not under the coat's usual") {
  Pet dog = every(10, Coat::drop);  // mat-prone over 50 mm (common practice)
  dog.trim = {part("back", shears(Shears::straight), Lay::with, 34_mm)};
  const auto next =
      next_of(dog, {visit("2026-11-24")}, "2026-11-24", shortening());  // 16 / 0.45: 35 days
  CHECK(next->reason == DueReason::mat_prone);
  CHECK(next->date == day("2026-12-29"));
  dog.trim[0].entry.leave = 48_mm;  // 4 days: the usual 4 weeks at least
  CHECK(next_of(dog, {visit("2026-11-24")}, "2026-11-24", shortening())->date == day("2026-12-22"));
  dog.trim[0].entry.leave = 51_mm;  // already over: brushed at home
  CHECK(next_of(dog, {visit("2026-11-24")}, "2026-11-24", shortening())->reason ==
        DueReason::owner_interval);
  Pet smooth = every(10, Coat::smooth);
  smooth.trim = {part("back", blade("4F"))};
  CHECK(next_of(smooth, {visit("2026-11-24")}, "2026-11-24", shortening())->reason ==
        DueReason::owner_interval);
}

TEST_CASE("a day agreed at the last visit stands") {
  Visit last = visit("2026-11-24");
  last.next = Located<Date>{day("2027-01-19"), line(3)};
  Salon shop = salon();
  shop.closed = {std::chrono::Tuesday};
  const auto made = plan(shop, every(4), {last});
  CHECK(made.plan.next_visit->reason == DueReason::agreed);
  CHECK(made.plan.next_visit->date == day("2027-01-19"));  // a Tuesday
  CHECK(made.says("next-closed"));
  last.next->value = day("2026-11-24");
  const auto wrong = plan(salon(), every(4), {last});
  CHECK(wrong.says("next-not-later"));
  CHECK(wrong.plan.next_visit->reason == DueReason::owner_interval);
}

TEST_CASE("how often it really came is the median of the days between") {
  const auto kept = [](const std::vector<Visit>& visits) {
    return plan(salon(), every(8), visits).plan.kept;
  };
  CHECK_FALSE(kept({}));
  CHECK_FALSE(kept({visit("2026-09-29")}));
  // Twice on one day is no interval.
  CHECK_FALSE(kept({visit("2026-09-29"), visit("2026-09-29")}));
  // 42, 56 and 70 days.
  const auto odd =
      kept({visit("2026-05-19"), visit("2026-06-30"), visit("2026-08-25"), visit("2026-11-03")});
  REQUIRE(odd);
  CHECK(odd->median == std::chrono::days(56));
  CHECK(odd->visits == 4);
  // 42 and 56 days.
  CHECK(kept({visit("2026-05-19"), visit("2026-06-30"), visit("2026-08-25")})->median ==
        std::chrono::days(49));
}

TEST_CASE("booked for today, the plan knows what holds after today's trim") {
  Pet dog = pet(Coat::curly);
  dog.trim = {part("ears", shears(Shears::straight), Lay::with, 35_mm)};
  dog.visit_every = {std::chrono::days(6 * 7), {}};
  const Visit last = visit("2026-10-13");
  const auto booked = plan(salon(), dog, {last}, "2026-11-24", {booking("2026-11-24")});
  REQUIRE(booked.plan.after_today);
  CHECK(booked.plan.after_today->next == day("2027-01-05"));
  REQUIRE_FALSE(booked.plan.after_today->growth.empty());
  CHECK(booked.plan.after_today->growth.front().since == day("2026-11-24"));
  CHECK(booked.plan.growth.front().since == day("2026-10-13"));
  // Booked again, or not booked today, or done: nobody has to guess.
  const auto twice =
      plan(salon(), dog, {last}, "2026-11-24", {booking("2026-11-24"), booking("2026-12-29")});
  REQUIRE(twice.plan.after_today);
  CHECK_FALSE(twice.plan.after_today->next);
  CHECK_FALSE(plan(salon(), dog, {last}).plan.after_today);
  CHECK_FALSE(plan(salon(), dog, {last, visit("2026-11-24")}, "2026-11-24", {booking("2026-11-24")})
                  .plan.after_today);
}
