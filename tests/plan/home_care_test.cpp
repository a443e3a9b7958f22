#include "plan/home_care.h"

#include <algorithm>

#include "plan/made.h"

using namespace furnish;
using namespace furnish::made;

namespace {
Pet weeks_apart(int weeks, std::optional<Coat> coat) {
  Pet dog = pet(coat);
  dog.visit_every = Located<CalendarSpan>{std::chrono::days(7 * weeks), {}};
  return dog;
}

HomeCare care_of(const Pet& dog, const std::vector<Visit>& visits = {}, const Salon& shop = salon(),
                 std::string_view today = "2026-11-24") {
  DiagnosticSink sink;
  // Where none is on file, today's goes as planned: a pet that was never here is due now.
  const Plan made = visits.empty() ? plan_after_today(shop, dog, visits, {}, day(today), sink)
                                   : plan(shop, dog, visits, today).plan;
  const Visit* latest = visits.empty() ? nullptr : &visits.back();
  return home_care(shop, dog, made, latest, day(today));
}

const BrushZone* zone_of(const HomeCare& care, std::string_view place) {
  for (const BrushZone& zone : care.zones) {
    if (std::ranges::find(zone.places, at(place)) != zone.places.end()) return &zone;
  }
  return nullptr;
}
}  // namespace

// Common practice, no source: a curly coat is brushed three times a week up to 25 mm, then daily.
// At 0.45 mm a day, the most that is published for coats that keep growing, 20 mm passes 25 mm on
// the twelfth day: 20 + 11 × 0.45 = 24.95, 20 + 12 × 0.45 = 25.4.
TEST_CASE("a curly coat is brushed daily from the day it is over its limit") {
  Pet dog = weeks_apart(6, Coat::curly);
  dog.trim = {part("back", shears(Shears::curved), Lay::with, 20_mm),
              part("ears", shears(Shears::straight), Lay::with, 40_mm),
              part("throat", blade("10"), Lay::against)};
  const HomeCare care = care_of(dog);
  REQUIRE(zone_of(care, "back") != nullptr);
  const BrushZone& back = *zone_of(care, "back");
  CHECK(back.now == HowOften::three_a_week);
  CHECK(back.then == HowOften::daily);
  CHECK(to_iso(*back.from) == "2026-12-06");
  CHECK(back.limit == 25_mm);
  CHECK(how_often(back, day("2026-12-05")) == HowOften::three_a_week);
  CHECK(how_often(back, day("2026-12-06")) == HowOften::daily);
  // Over it from the start, and never up to the visit: 1.588 + 42 × 0.45 is under 25.
  CHECK(zone_of(care, "ears")->now == HowOften::daily);
  CHECK_FALSE(zone_of(care, "ears")->from);
  CHECK(zone_of(care, "throat")->now == HowOften::three_a_week);
  CHECK_FALSE(zone_of(care, "throat")->from);
  // Most often first.
  CHECK(care.zones.front().now == HowOften::daily);
}

TEST_CASE("what passes its limit later changes together, once, on the earliest day") {
  Pet dog = weeks_apart(6, Coat::curly);
  dog.trim = {part("neck", shears(Shears::curved), Lay::with, 10_mm),
              part("back", shears(Shears::curved), Lay::with, 20_mm),
              part("chest", shears(Shears::curved), Lay::with, 22_mm)};
  const HomeCare care = care_of(dog);
  REQUIRE(zone_of(care, "back") == zone_of(care, "chest"));
  CHECK(to_iso(*zone_of(care, "back")->from) == "2026-12-01");  // 22 + 7 × 0.45 = 25.15
  // 10 + 34 × 0.45 is over 25 as well, on 28 December: nobody keeps a third rhythm for that.
  CHECK(zone_of(care, "neck") == zone_of(care, "back"));
}

TEST_CASE("a length that is passed within a week is passed") {
  Pet dog = weeks_apart(6, Coat::curly);
  dog.trim = {part("back", shears(Shears::curved), Lay::with, Length::mm(22.4)),
              part("chest", shears(Shears::curved), Lay::with, 22_mm)};
  const HomeCare care = care_of(dog);
  CHECK(zone_of(care, "back")->now == HowOften::daily);  // 22.4 + 6 × 0.45 = 25.1, on the seventh
  CHECK_FALSE(zone_of(care, "back")->from);
  CHECK(zone_of(care, "chest")->now == HowOften::three_a_week);  // on the eighth
  CHECK(to_iso(*zone_of(care, "chest")->from) == "2026-12-01");
}

TEST_CASE("where most of the coat changes, all of it does, and no day has a third rhythm") {
  Pet dog = weeks_apart(6, Coat::curly);
  dog.trim = {part("ears", shears(Shears::straight), Lay::with, 40_mm),
              part("back", shears(Shears::curved), Lay::with, 20_mm),
              part("neck", shears(Shears::curved), Lay::with, 20_mm),
              part("throat", blade("10"), Lay::against)};
  const HomeCare care = care_of(dog);
  REQUIRE(zone_of(care, "throat") == zone_of(care, "back"));
  CHECK(care.zones.size() == 2);
  // 20 mm passes on 6 December: up to then the back is brushed on three days a week, and every day
  // the ears; from then on all of it every day.
  for (const CareDay& one : care.days) {
    if (one.visit) continue;
    CHECK(one.daily);
    if (one.date >= day("2026-12-06")) CHECK_FALSE(one.brush);
  }
  CHECK(std::ranges::count_if(care.days, &CareDay::brush) == 5);
}

TEST_CASE("coats without such a length keep one rhythm, shedding ones a daily one") {
  for (const auto& [coat, often] :
       {std::pair(Coat::double_coat, HowOften::three_a_week),
        std::pair(Coat::smooth, HowOften::weekly), std::pair(Coat::wire, HowOften::weekly)}) {
    Pet dog = weeks_apart(8, coat);
    dog.trim = {part("back", Tool(Brush{}))};
    const HomeCare care = care_of(dog);
    REQUIRE(care.zones.size() == 1);
    CHECK(care.zones.front().now == often);
    CHECK_FALSE(care.zones.front().from);
  }
  Pet dog = weeks_apart(8, Coat::double_coat);
  dog.trim = {part("back", Tool(Brush{}))};
  Visit blowing = visit("2026-11-24");
  blowing.came_in.shedding = "blowing in tufts";
  CHECK(care_of(dog, {blowing}).zones.front().now == HowOften::daily);
  blowing.came_in.shedding = "not heavy";
  CHECK(care_of(dog, {blowing}).zones.front().now == HowOften::three_a_week);
  CHECK(care_of(weeks_apart(4, Coat::hairless)).zones.empty());
  CHECK(care_of(weeks_apart(4, std::nullopt)).zones.empty());
}

TEST_CASE("days of brushing in four weeks") {
  const auto count = [](HowOften often) {
    int days = 0;
    for (int after = 1; after <= 28; ++after) days += brushes_on(often, after);
    return days;
  };
  CHECK(count(HowOften::daily) == 28);
  CHECK(count(HowOften::every_other_day) == 14);
  CHECK(count(HowOften::three_a_week) == 12);
  CHECK(count(HowOften::weekly) == 4);
  CHECK(count(HowOften::never) == 0);
}

TEST_CASE("the calendar has every day up to the visit, once") {
  Pet dog = weeks_apart(8, Coat::double_coat);
  dog.trim = {part("back", Tool(Brush{}))};
  const HomeCare care = care_of(dog, {visit("2026-11-24")});
  REQUIRE(care.days.size() == 56);
  for (std::size_t i = 0; i < care.days.size(); ++i) {
    CHECK(care.days[i].date == day("2026-11-25") + std::chrono::days(i));
  }
  CHECK(care.days.back().visit);
  CHECK_FALSE(care.days.back().brush);
  CHECK(std::ranges::count_if(care.days, &CareDay::visit) == 1);
  CHECK(std::ranges::count_if(care.days, &CareDay::brush) == 24);
}

TEST_CASE("nails four weeks on, unless the visit is near") {
  CHECK(to_iso(*care_of(weeks_apart(8, Coat::smooth), {visit("2026-11-24")}).nails) ==
        "2026-12-22");
  CHECK_FALSE(care_of(weeks_apart(4, Coat::smooth), {visit("2026-11-24")}).nails);
  CHECK_FALSE(care_of(weeks_apart(5, Coat::smooth), {visit("2026-11-24")}).nails);  // 7 days after
  CHECK(care_of(weeks_apart(6, Coat::smooth), {visit("2026-11-24")}).nails);        // 14 days
}

TEST_CASE("a style that is grown out sooner asks for a tidy halfway, on an open day") {
  Pet dog = weeks_apart(8, Coat::curly);
  dog.style = Style{};
  dog.style->grown_out = std::chrono::days(5 * 7);
  CHECK(to_iso(*care_of(dog, {visit("2026-11-24")}).tidy) == "2026-12-22");
  Salon shop = salon();
  shop.closed = {std::chrono::Tuesday};
  CHECK(to_iso(*care_of(dog, {visit("2026-11-24")}, shop).tidy) == "2026-12-21");
  dog.style->grown_out = std::chrono::days(8 * 7);
  CHECK_FALSE(care_of(dog, {visit("2026-11-24")}).tidy);
}

TEST_CASE("an interval of years, and none at all") {
  const HomeCare years = care_of(weeks_apart(104, Coat::smooth), {visit("2026-11-24")});
  CHECK(years.days.size() == most_care_days);
  CHECK(std::ranges::none_of(years.days, &CareDay::visit));
  CHECK(years.visit);
  const HomeCare none = care_of(pet(), {visit("2026-11-24")});
  CHECK_FALSE(none.visit);
  CHECK(none.days.size() == 56);
  // Overdue: the visit is not ahead.
  CHECK_FALSE(care_of(weeks_apart(4, Coat::smooth), {visit("2026-06-24")}).visit);
}

TEST_CASE("a visit that went as planned counts, where none of the day is on file") {
  const Pet dog = weeks_apart(6, Coat::smooth);
  DiagnosticSink sink;
  const std::vector<Visit> old{visit("2026-06-24")};
  const auto due = [&](const std::vector<Visit>& visits) {
    return plan_after_today(salon(), dog, visits, {}, day("2026-11-24"), sink).next_visit->date;
  };
  CHECK(to_iso(due(old)) == "2027-01-05");
  Visit today = visit("2026-11-24");
  today.next = Located<Date>{day("2027-02-02"), {}};
  CHECK(to_iso(due({today})) == "2027-02-02");
}

TEST_CASE("a bath at home is mixed for the owner's bottle") {
  Pet dog = weeks_apart(8, Coat::smooth);
  CHECK_FALSE(care_of(dog).bath);
  dog.home.bath_every = Located<std::chrono::days>{std::chrono::days(28), {}};
  dog.home.product = product("oat");  // ten parts of water to one
  dog.home.bottle = Volume::ml(275);
  const auto bath = care_of(dog).bath;
  REQUIRE(bath);
  REQUIRE(bath->mix);
  CHECK(bath->mix->product == Volume::ml(25));
  CHECK(bath->mix->water == Volume::ml(250));
}

namespace {
/// A visit of which nothing was done, which found two places felted and one combable.
Visit sent_home_matted() {
  Visit out = visit("2026-11-24");
  out.work = Work::not_done;
  out.came_in.regions = {state("left ear", {}, 3), state("front legs", {}, 4),
                         state("back", {}, 2)};
  return out;
}
std::vector<Place> left_in(const Pet& dog, const std::vector<Visit>& visits) {
  std::vector<Place> out;
  for (const MattedPlace& one : plan(salon(), dog, visits).plan.mats_left) {
    out.push_back(one.place);
  }
  return out;
}
using Places = std::vector<Place>;
}  // namespace

TEST_CASE("mats that no comb opens stay in the coat until somebody cuts them off") {
  Pet dog = weeks_apart(6, Coat::drop);
  dog.trim = {part("ears", Brush{}), part("front legs", shears(Shears::curved), Lay::with, 40_mm),
              part("back", blade("7F"))};
  Visit last = sent_home_matted();
  CHECK(left_in(dog, {last}) == Places{at("left ear"), at("front legs")});
  PlacedEntry& clipped = last.done.emplace_back();
  clipped.place = at("left front leg");
  clipped.entry.tool = blade("7F");
  CHECK(left_in(dog, {last}) == Places{at("left ear"), at("right front leg")});
  last.went_out = {state("left ear", {}, 0)};
  CHECK(left_in(dog, {last}) == Places{at("right front leg")});
  // The next one that is sent home, too, says nothing of them.
  Visit next = visit("2026-11-24");
  next.number = 2;
  next.work = Work::not_done;
  CHECK(left_in(dog, {last, next}) == Places{at("right front leg")});
  next.work = Work::done;
  CHECK(left_in(dog, {last, next}).empty());
  // Done as planned: what is only brushed is as it came.
  last = sent_home_matted();
  last.work = Work::done;
  CHECK(left_in(dog, {last}) == Places{at("left ear")});
  last.came_in.regions = {state("tail", {}, {})};
  last.came_in.regions.front().encircling = true;
  CHECK(left_in(dog, {last}) == Places{at("tail")});
}

TEST_CASE("nobody brushes or baths at home where such mats are left") {
  Pet dog = weeks_apart(6, Coat::drop);
  dog.trim = {part("ears", Brush{}), part("front legs", Brush{}), part("back", blade("7F"))};
  dog.home.bath_every = Located<std::chrono::days>{std::chrono::days(28), {}};
  const HomeCare care = care_of(dog, {sent_home_matted()});
  CHECK(care.avoided == Places{at("left ear"), at("front legs")});
  CHECK(zone_of(care, "ears") == nullptr);
  CHECK(zone_of(care, "front legs") == nullptr);
  CHECK_FALSE(care.bath);
  Visit combed = sent_home_matted();
  for (RegionState& state : combed.came_in.regions) state.mats = 2;
  CHECK(care_of(dog, {combed}).avoided.empty());
  CHECK(care_of(dog, {combed}).bath);
}
