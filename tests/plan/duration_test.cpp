#include "plan/duration.h"

#include "plan/made.h"

using namespace furnish;
using namespace furnish::made;
using std::chrono::minutes;

namespace {
std::optional<Duration> after(const std::vector<int>& own, const Pet& dog = pet(Coat::smooth)) {
  std::vector<Visit> visits;
  for (std::size_t i = 0; i < own.size(); ++i) {
    visits.push_back(visit("2026-01-01"));
    visits.back().date.value += std::chrono::days(7 * i);
    if (own[i] > 0) visits.back().minutes = minutes(own[i]);
  }
  return plan(salon(), dog, visits).plan.duration;
}
}  // namespace

TEST_CASE("the median of the pet's own visits, with their spread") {
  CHECK(after({85, 95, 90})->expected == minutes(90));
  CHECK(after({85, 95, 90})->low == minutes(85));
  CHECK(after({85, 95, 90})->high == minutes(95));
  CHECK(after({80, 91})->expected == minutes(86));  // 85.5, up
  CHECK(after({80, 0, 91})->visits == 2);           // one without its minutes
  const auto one = after({80});
  CHECK(one->expected == minutes(80));
  CHECK(one->low == minutes(60));
  CHECK(one->high == minutes(100));
  CHECK(one->visits == 1);
}

TEST_CASE("from four visits on the quartiles, so that one bad day does not widen it") {
  // 60 80 90 100 240: quartiles at the second and fourth value.
  const auto time = after({90, 240, 60, 100, 80});
  CHECK(time->expected == minutes(90));
  CHECK(time->low == minutes(80));
  CHECK(time->high == minutes(100));
  CHECK(after({60, 70, 80, 90})->low == minutes(68));  // 67.5, up
}

TEST_CASE("without visits: base, surface and parts, with the salon's coefficients") {
  Pet dog = pet(Coat::double_coat);
  dog.weight = Located<Mass>{Mass::kg(20), {}};
  dog.trim = {part("back", blade("10")), part("hocks", comb(13_mm)),
              part("feet", shears(Shears::straight)), part("ruff", Brush{})};
  // 15 + 0.7442 · (30 + 50 + 25) + 2 · 3 + 1 · 5 = 104.1
  CHECK(after({}, dog)->expected == minutes(104));
  CHECK(after({}, dog)->low == minutes(78));
  CHECK(after({}, dog)->high == minutes(130));
  CHECK(after({}, dog)->visits == 0);
  dog.bath.none = true;  // 15 + 0.7442 · 25 + 11
  CHECK(after({}, dog)->expected == minutes(45));
  dog.bath.none = false;
  dog.coat = Coat::smooth;  // 15 + 0.7442 · (30 + 25) + 11
  CHECK(after({}, dog)->expected == minutes(67));
  dog.weight.reset();
  CHECK_FALSE(after({}, dog));
}

TEST_CASE("a day adds up") {
  const std::vector<Duration> all{{minutes(90), minutes(80), minutes(100), 3},
                                  {minutes(60), minutes(45), minutes(75), 0}};
  CHECK(total(all).expected == minutes(150));
  CHECK(total(all).low == minutes(125));
  CHECK(total(all).high == minutes(175));
}
