#include "plan/growth.h"

#include "plan/made.h"

using namespace furnish;
using namespace furnish::made;

namespace {
std::vector<RegionGrowth> growth_of(const Pet& dog, const std::vector<Visit>& visits,
                                    std::string_view today = "2026-11-24") {
  return plan(salon(), dog, visits, today).plan.growth;
}

Pet eared(Coat coat = Coat::drop) {
  Pet dog = pet(coat);
  dog.trim = {part("ears", shears(Shears::straight), Lay::with, 20_mm)};
  return dog;
}

/// A visit that the ears came to with so much coat, and left with so much.
Visit measured(std::string_view iso, Length came, Length went) {
  Visit out = visit(iso);
  out.came_in.regions.push_back(state("ears", came));
  out.went_out.push_back(state("ears", went));
  return out;
}
}  // namespace

// Worked from Al-Bagdadi's rates for a beagle (1977, from memory).
TEST_CASE("6.35 mm reaches 25.4 mm after 57 days at 0.34 mm a day, after 48 at 0.40") {
  CHECK(days_to_reach(6350_um, 25400_um, 340) == 57);
  CHECK(days_to_reach(6350_um, 25400_um, 400) == 48);
  CHECK(days_to_reach(6350_um, 6350_um, 400) == 0);
  CHECK(days_to_reach(6000_um, 7000_um, 100) == 10);
  CHECK_FALSE(days_to_reach(6350_um, 25400_um, 0));
}

// Published ranges: see the coats' table for their sources.
TEST_CASE("without own measurements the coat's published range") {
  const auto rows = growth_of(eared(), {visit("2026-10-05")}, "2026-11-24");
  REQUIRE(rows.size() == 1);
  CHECK(rows[0].rate.basis == RateBasis::published);
  CHECK(rows[0].rate.low == 250);
  CHECK(rows[0].rate.high == 450);
  CHECK(rows[0].since == day("2026-10-05"));
  CHECK(rows[0].today == LengthRange{32500_um, 42500_um});  // 50 days
  CHECK(length_on(rows[0], day("2026-10-05")) == LengthRange{20_mm, 20_mm});
  CHECK(length_on(rows[0], day("2026-01-01")) == LengthRange{20_mm, 20_mm});
  CHECK(growth_of(pet(), {}).empty());
}

TEST_CASE("a double coat stops at its natural length, a drop coat goes on") {
  const auto stops = growth_of(eared(Coat::double_coat), {visit("2020-01-01")});
  // 50 mm on the back, ears 0.7 of that (common practice, no source).
  CHECK(stops[0].natural == 35_mm);
  CHECK(stops[0].today == LengthRange{35_mm, 35_mm});
  const auto goes_on = growth_of(eared(), {visit("2020-01-01")});
  CHECK_FALSE(goes_on[0].natural);
  CHECK(goes_on[0].today.low > 500_mm);
}

TEST_CASE("left longer than natural it neither grows nor shrinks") {
  Pet dog = eared(Coat::double_coat);
  dog.trim[0].entry.leave = 60_mm;
  CHECK(growth_of(dog, {visit("2026-01-01")})[0].today == LengthRange{60_mm, 60_mm});
}

TEST_CASE("two visits give a pair, and the pet's own rate") {
  // 20 mm to 40 in 50 days: 0.4 mm a day, give or take half the published range (0.1).
  const auto rows = growth_of(
      eared(), {measured("2026-01-01", 38_mm, 20_mm), measured("2026-02-20", 40_mm, 22_mm)});
  CHECK(rows[0].rate.basis == RateBasis::measured);
  CHECK(rows[0].rate.measurements == 1);
  CHECK(rows[0].rate.visits == 2);
  CHECK(rows[0].rate.low == Approx(300));
  CHECK(rows[0].rate.high == Approx(500));
  CHECK(rows[0].left == LengthRange{22_mm, 22_mm});
  CHECK(rows[0].left_measured);
}

TEST_CASE("three pairs: least squares with Student's interval") {
  // Days 50, 50, 60; grown 20, 18, 24 mm. Slope 3340/8600; worked by hand:
  // Σxy = 50·20 + 50·18 + 60·24 = 3340, Σx² = 8600 -> 0.388372; residuals 0.5814, -1.4186, 0.6977,
  // s² = (0.3380 + 2.0125 + 0.4867) / 2 = 1.41860, sd = 1.19105 / √8600 = 0.012843; · 4.303 =
  // 0.05526.
  const auto rows = growth_of(
      eared(), {measured("2026-01-01", 38_mm, 20_mm), measured("2026-02-20", 40_mm, 20_mm),
                measured("2026-04-11", 38_mm, 20_mm), measured("2026-06-10", 44_mm, 20_mm)});
  CHECK(rows[0].rate.measurements == 3);
  CHECK(rows[0].rate.visits == 4);
  CHECK((rows[0].rate.low + rows[0].rate.high) / 2 == Approx(388.372).margin(0.01));
  CHECK((rows[0].rate.high - rows[0].rate.low) / 2 == Approx(55.26).margin(0.05));
}

TEST_CASE("perfect measurements still have a reading error") {
  const auto rows = growth_of(
      eared(), {measured("2026-01-01", 38_mm, 20_mm), measured("2026-02-20", 40_mm, 20_mm),
                measured("2026-04-11", 40_mm, 20_mm), measured("2026-05-31", 40_mm, 20_mm)});
  CHECK(rows[0].rate.high > rows[0].rate.low + 20);
}

TEST_CASE("two rates that lie far apart are both inside") {
  const auto rows = growth_of(
      eared(), {measured("2026-01-01", 38_mm, 20_mm), measured("2026-02-20", 30_mm, 20_mm),
                measured("2026-04-11", 55_mm, 20_mm)});
  CHECK(rows[0].rate.low <= 200);
  CHECK(rows[0].rate.high >= 700);
}

TEST_CASE("one region's measurements speak for the others until they have their own") {
  Pet dog = eared();
  dog.trim.push_back(part("tail", shears(Shears::straight), Lay::with, 60_mm));
  const auto rows =
      growth_of(dog, {measured("2026-01-01", 38_mm, 20_mm), measured("2026-02-20", 40_mm, 20_mm)});
  REQUIRE(rows.size() == 2);
  CHECK(rows[1].rate.basis == RateBasis::measured);
}

TEST_CASE("a coat that came back shorter is not growth, and is reported") {
  const auto made =
      plan(salon(), eared(),
           {measured("2026-01-01", 38_mm, 20_mm), measured("2026-02-20", 15_mm, 15_mm)});
  CHECK(made.says("coat-shrank"));
  CHECK(made.plan.growth[0].rate.basis == RateBasis::published);
}

TEST_CASE("two visits on one day have no days between them") {
  Visit second = measured("2026-01-01", 40_mm, 22_mm);
  second.date.span = line(2);
  const auto rows = growth_of(eared(), {measured("2026-01-01", 38_mm, 20_mm), second});
  CHECK(rows[0].rate.basis == RateBasis::published);
  CHECK(rows[0].left == LengthRange{22_mm, 22_mm});  // the later file
}

TEST_CASE("what was done otherwise than planned is what was left") {
  Visit last = visit("2026-11-24");
  last.done = {{at("ears"), part("ears", shears(Shears::straight), Lay::with, 12_mm).entry}};
  CHECK(growth_of(eared(), {last})[0].left == LengthRange{12_mm, 12_mm});
}

TEST_CASE("more days never less coat") {
  for (const CoatInfo& coat : coats()) {
    Pet dog = eared(coat.coat);
    dog.trim.push_back(part("back", blade("5F"), Lay::with));
    for (const RegionGrowth& row : growth_of(dog, {visit("2026-01-01")})) {
      LengthRange before = row.left;
      for (int days = 0; days < 900; days += 7) {
        const LengthRange now = length_on(row, row.since + std::chrono::days(days));
        CHECK(now.low >= before.low);
        CHECK(now.high >= before.high);
        CHECK(now.low <= now.high);
        before = now;
      }
    }
  }
}

TEST_CASE("days until over a limit: the last day at most there") {
  const auto rows = growth_of(eared(), {visit("2026-11-24")});  // 20 mm, up to 0.45 a day
  const int days = *days_until_over(rows[0], 24500_um);
  CHECK(days == 10);  // 20 + 10 · 0.45 = 24.5: not over
  CHECK(*days_until_over(rows[0], 24499_um) == 9);
  CHECK(*days_until_over(rows[0], 19_mm) == -1);
  const auto stops = growth_of(eared(Coat::double_coat), {visit("2026-11-24")});
  CHECK_FALSE(days_until_over(stops[0], 35_mm));
}
