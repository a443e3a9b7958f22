#include "plan/health.h"

#include "plan/made.h"

using namespace furnish;
using namespace furnish::made;

namespace {
Visit weighed(std::string_view iso, Mass weight) {
  Visit out = visit(iso);
  out.weight = Located<Mass>{weight, line(4)};
  return out;
}

Health health_of(const Pet& dog, const std::vector<Visit>& visits,
                 std::string_view today = "2026-11-24") {
  return plan(salon(), dog, visits, today).plan.health;
}
}  // namespace

// Veterinary hospital's client leaflet on abnormal weight loss: more than 10 %.
TEST_CASE("ten percent is not more than ten percent") {
  const auto loss = [](Mass from, Mass to) {
    return health_of(pet(), {weighed("2026-09-01", from), weighed("2026-11-24", to)})
        .since_last->loss;
  };
  CHECK_FALSE(loss(Mass::kg(20), Mass::kg(18)));
  CHECK(loss(Mass::kg(20), Mass::kg(17.9)));
  CHECK(loss(Mass::micrograms(20'000'000'000), Mass::micrograms(17'999'999'999)));
  CHECK_FALSE(loss(Mass::pounds(10), Mass::pounds(9)));
}

TEST_CASE("mixed units compare exactly") {
  // 70 lb = 31.7514659 kg, exact (NIST Handbook 44, App. C).
  CHECK(Mass::pounds(70) == Mass::micrograms(31'751'465'900));
  const auto change = health_of(pet(), {weighed("2026-09-01", Mass::pounds(70)),
                                        weighed("2026-11-24", Mass::micrograms(31'751'465'900))});
  CHECK(change.since_last->percent == 0);
}

TEST_CASE("five percent is a quiet mark") {
  const auto change = [](double to) {
    return *health_of(pet(),
                      {weighed("2026-09-01", Mass::kg(20)), weighed("2026-11-24", Mass::kg(to))})
                .since_last;
  };
  CHECK_FALSE(change(19).mark);
  CHECK(change(18.99).mark);
  CHECK_FALSE(change(18.99).loss);
  CHECK(change(18.99).percent == Approx(-5.05));
  CHECK_FALSE(change(25).mark);
}

TEST_CASE("a slow loss shows against the year's highest") {
  const auto h =
      health_of(pet(), {weighed("2025-11-23", Mass::kg(30)),  // over a year ago
                        weighed("2026-01-01", Mass::kg(20)), weighed("2026-06-01", Mass::kg(19)),
                        weighed("2026-11-24", Mass::kg(17.9))});
  CHECK_FALSE(h.since_last->loss);
  CHECK(h.since_highest->before.weight == Mass::kg(20));
  CHECK(h.since_highest->loss);
  const auto on_the_day =
      health_of(pet(), {weighed("2025-11-24", Mass::kg(30)), weighed("2026-11-24", Mass::kg(20))});
  CHECK(on_the_day.since_highest->before.weight == Mass::kg(30));
}

TEST_CASE("which weight is the newest") {
  Pet dog = pet();
  dog.weight = Located<Mass>{Mass::kg(4.6), line(2)};
  CHECK(health_of(dog, {}).weight->weight == Mass::kg(4.6));  // undated, and no other
  CHECK(health_of(dog, {weighed("2026-09-01", Mass::kg(5))}).weight->weight == Mass::kg(5));
  dog.weighed = Located<Date>{day("2026-10-01"), line(3)};
  const auto h = health_of(dog, {weighed("2026-09-01", Mass::kg(5))});
  CHECK(h.weight->weight == Mass::kg(4.6));
  CHECK(h.since_last->before.weight == Mass::kg(5));
  dog.weighed->value = day("2026-12-01");  // after today: not counted
  CHECK(health_of(dog, {weighed("2026-09-01", Mass::kg(5))}).weight->weight == Mass::kg(5));
  CHECK_FALSE(health_of(dog, {}).weight);
}

TEST_CASE("a weight that jumps is probably a slip") {
  const auto made = [](double from, double to, std::string_view born = "2020-01-01") {
    Pet dog = pet();
    dog.born = Birth{day(born), line(2)};
    return plan(salon(), dog,
                {weighed("2026-09-01", Mass::kg(from)), weighed("2026-11-24", Mass::kg(to))});
  };
  CHECK(made(4.6, 46).says("weight-jump"));  // tenfold: a decimal point
  CHECK(made(46, 4.6).says("weight-jump"));
  CHECK(made(4.6, 10.14).says("weight-jump"));  // 2.2046 times: pounds for kilograms
  CHECK_FALSE(made(4.6, 6).says("weight-jump"));
  CHECK_FALSE(made(4.6, 10.14, "2026-06-01").says("weight-jump"));  // a puppy
  CHECK(made(10.14, 4.6, "2026-06-01").says("weight-jump"));
}

// Over 10 years, over 7 at 40 kg and more, under 6 months: common practice, no source.
TEST_CASE("senior from the day after the birthday, puppy to the day before six months") {
  const Date today = day("2026-11-24");
  const auto group = [&](std::string_view born, std::optional<Mass> weight = {}) {
    return age_group(day(born), weight, today);
  };
  CHECK(group("2016-11-24") == AgeGroup::adult);  // ten today
  CHECK(group("2016-11-23") == AgeGroup::senior);
  CHECK(group("2019-11-23", Mass::kg(39.9)) == AgeGroup::adult);
  CHECK(group("2019-11-23", Mass::kg(40)) == AgeGroup::senior);
  CHECK(group("2019-11-24", Mass::kg(40)) == AgeGroup::adult);
  CHECK(group("2026-05-24") == AgeGroup::adult);  // six months today
  CHECK(group("2026-05-25") == AgeGroup::puppy);
  CHECK(group("2026-11-25") == AgeGroup::unknown);
}

// CDC: rabies counts from 28 days after the first dose, at once after any booster.
TEST_CASE("a vaccination counts from its waiting days to its last day") {
  VaccinationRule rule;
  rule.name = "rabies";
  rule.wait = std::chrono::days(28);
  rule.valid = std::chrono::days(365);
  rule.required = true;
  const auto status = [&](std::string_view given, bool booster, std::string_view today) {
    const std::vector<Vaccination> list{{"rabies", {day(given), line(3)}, booster}};
    return vaccination_state(rule, list, day(today)).status;
  };
  using enum VaccinationStatus;
  CHECK(status("2026-05-01", false, "2026-05-28") == not_yet);
  CHECK(status("2026-05-01", false, "2026-05-29") == valid);  // 28 days after
  CHECK(status("2026-05-01", true, "2026-05-01") == valid);
  CHECK(status("2026-05-01", false, "2027-05-01") == valid);  // 365 days after: its last day
  CHECK(status("2026-05-01", false, "2027-05-02") == expired);
  CHECK(status("2026-05-01", false, "2026-04-30") == missing);  // not given yet
  rule.wait = std::chrono::days(14);                            // as some places say
  CHECK(status("2026-05-01", false, "2026-05-15") == valid);
  CHECK(vaccination_state(rule, {}, day("2026-05-01")).status == missing);
}

// A certificate counts calendar years: from a day to the same one, in February to its last.
TEST_CASE("a vaccination that holds for years ends on its day of the year") {
  VaccinationRule rule;
  rule.name = "rabies";
  const auto until = [&](std::string_view given, int years) {
    rule.valid = std::chrono::months(12 * years);
    const std::vector<Vaccination> list{{"rabies", {day(given), line(3)}, true}};
    return to_iso(*vaccination_state(rule, list, day(given)).until);
  };
  CHECK(until("2025-02-28", 1) == "2026-02-28");
  CHECK(until("2024-02-28", 1) == "2025-02-28");  // 366 days on
  CHECK(until("2024-02-29", 1) == "2025-02-28");
  CHECK(until("2023-11-24", 3) == "2026-11-24");  // 1096 days on
  CHECK(until("2024-02-29", 4) == "2028-02-29");
  CHECK(VaccinationRule().valid == CalendarSpan(std::chrono::months(12)));
}

TEST_CASE("a loss since a weight without its day is said too") {
  Pet dog = pet();
  dog.weight = {Mass::kg(20), line(2)};
  const auto h = health_of(dog, {weighed("2026-11-24", Mass::kg(17.4))});
  REQUIRE(h.since_last);
  CHECK(h.since_last->loss);  // 13 %
  CHECK_FALSE(h.since_last->before.on);
  const auto made = plan(salon(), dog, {weighed("2026-11-24", Mass::kg(17.4))});
  REQUIRE(made.caution(RuleId::weight_loss) != nullptr);
  CHECK(made.caution(RuleId::weight_loss)->what.key == "weight-loss-undated");
  CHECK(plan(salon(), dog, {weighed("2026-11-24", Mass::kg(19))}).caution(RuleId::weight_loss) ==
        nullptr);
}

TEST_CASE("the newest dose decides, in whatever order they are written") {
  VaccinationRule rule;
  rule.name = "Rabies";
  std::vector<Vaccination> list{{"rabies", {day("2026-05-01"), line(3)}, true},
                                {"rabies", {day("2023-05-01"), line(2)}, false},
                                {"distemper", {day("2026-11-01"), line(4)}, false}};
  CHECK(vaccination_state(rule, list, day("2026-11-24")).given == day("2026-05-01"));
  std::swap(list[0], list[1]);
  CHECK(vaccination_state(rule, list, day("2026-11-24")).given == day("2026-05-01"));
}

TEST_CASE("a slip of the first visit is seen by a weight without its day") {
  Pet dog = pet(Coat::smooth);
  dog.weight = Located<Mass>{Mass::kg(8.5), line(3)};
  for (const auto& [kg, told] : {std::pair(85.0, true), std::pair(9.0, false)}) {
    Visit first = visit("2026-11-24");
    first.weight = Located<Mass>{Mass::kg(kg), line(9)};
    CHECK(plan(salon(), dog, {first}).says("weight-jump") == told);
  }
  // A puppy may well have grown.
  dog.born = Birth{day("2026-01-01"), line(2)};
  Visit grown = visit("2026-11-24");
  grown.weight = Located<Mass>{Mass::kg(85), line(9)};
  CHECK_FALSE(plan(salon(), dog, {grown}).says("weight-jump"));
}
