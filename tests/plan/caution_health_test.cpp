#include "plan/made.h"

using namespace furnish;
using namespace furnish::made;

namespace {
bool fires(RuleId id, const Pet& dog, const std::vector<Visit>& visits = {},
           const Salon& shop = salon()) {
  return plan(shop, dog, visits).caution(id) != nullptr;
}

Visit weighed(std::string_view iso, double kg) {
  Visit out = visit(iso);
  out.weight = Located<Mass>{Mass::kg(kg), line(4)};
  return out;
}

Pet born(std::string_view iso, std::optional<double> kg = {}) {
  Pet dog = pet();
  dog.born = Birth{day(iso), line(2)};
  if (kg) dog.weight = Located<Mass>{Mass::kg(*kg), line(3)};
  return dog;
}
}  // namespace

TEST_CASE("vaccination: required, and expired, not yet valid or not on file") {
  Salon shop = salon();
  shop.vaccinations = {{"rabies", std::chrono::days(28), std::chrono::days(365), true, {}}};
  Pet dog = pet();
  CHECK(fires(RuleId::vaccination, dog, {}, shop));  // none on file
  dog.vaccinations = {{"rabies", {day("2026-10-27"), line(6)}, false}};
  CHECK_FALSE(fires(RuleId::vaccination, dog, {}, shop));  // 28 days ago
  dog.vaccinations[0].given.value = day("2026-10-28");
  CHECK(fires(RuleId::vaccination, dog, {}, shop));
  dog.vaccinations[0].booster = true;
  CHECK_FALSE(fires(RuleId::vaccination, dog, {}, shop));
  dog.vaccinations[0].given.value = day("2025-11-24");  // 365 days ago
  CHECK_FALSE(fires(RuleId::vaccination, dog, {}, shop));
  dog.vaccinations[0].given.value = day("2025-11-23");
  CHECK(fires(RuleId::vaccination, dog, {}, shop));
  CHECK(said(plan(shop, dog).caution(RuleId::vaccination)->what) ==
        "vaccination-expired: rabies; 2026-11-23");
  CHECK(plan(shop, dog).caution(RuleId::vaccination)->span.begin.line == 6);
  shop.vaccinations[0].required = false;
  CHECK_FALSE(fires(RuleId::vaccination, dog, {}, shop));
  CHECK_FALSE(fires(RuleId::vaccination, pet()));
}

// Veterinary hospital's client leaflet on abnormal weight loss: more than 10 %.
TEST_CASE("weight-loss: more than a tenth since the last or the year's highest") {
  CHECK_FALSE(
      fires(RuleId::weight_loss, pet(), {weighed("2026-09-01", 20), weighed("2026-11-24", 18)}));
  CHECK(
      fires(RuleId::weight_loss, pet(), {weighed("2026-09-01", 20), weighed("2026-11-24", 17.9)}));
  CHECK(fires(RuleId::weight_loss, pet(),
              {weighed("2026-01-01", 20), weighed("2026-06-01", 19), weighed("2026-11-24", 17.9)}));
  CHECK_FALSE(fires(RuleId::weight_loss, pet(), {weighed("2026-11-24", 17.9)}));
  CHECK_FALSE(fires(RuleId::weight_loss, pet()));
}

TEST_CASE("of a year or a month of birth alone: old, or a puppy, if it may be") {
  const auto about = [](std::string_view first, BirthKnown known) {
    Pet dog = born(first);
    dog.born->known = known;
    return dog;
  };
  // Today is 24 November 2026.
  CHECK(fires(RuleId::senior, about("2016-01-01", BirthKnown::year)));
  CHECK_FALSE(fires(RuleId::senior, about("2017-01-01", BirthKnown::year)));
  CHECK(fires(RuleId::senior, about("2016-11-01", BirthKnown::month)));
  CHECK(fires(RuleId::puppy, about("2026-01-01", BirthKnown::year)));
  CHECK(fires(RuleId::puppy, about("2026-05-01", BirthKnown::month)));
  CHECK_FALSE(fires(RuleId::puppy, about("2026-04-01", BirthKnown::month)));
  CHECK(said(plan(salon(), about("2014-01-01", BirthKnown::year)).caution(RuleId::senior)->what) ==
        "senior-about: 12");
}

TEST_CASE("senior: over ten, over seven at forty kilograms") {
  CHECK_FALSE(fires(RuleId::senior, born("2016-11-24")));
  CHECK(fires(RuleId::senior, born("2016-11-23")));
  CHECK_FALSE(fires(RuleId::senior, born("2019-11-23", 39.9)));
  CHECK(fires(RuleId::senior, born("2019-11-23", 40)));
  CHECK_FALSE(fires(RuleId::senior, born("2019-11-24", 40)));
  CHECK_FALSE(fires(RuleId::senior, pet()));
  CHECK(said(plan(salon(), born("2014-11-23")).caution(RuleId::senior)->what) == "senior: 12");
}

TEST_CASE("puppy: under six months") {
  CHECK(fires(RuleId::puppy, born("2026-05-25")));
  CHECK_FALSE(fires(RuleId::puppy, born("2026-05-24")));
  CHECK_FALSE(fires(RuleId::puppy, pet()));
  CHECK(said(plan(salon(), born("2026-10-24")).caution(RuleId::puppy)->what) == "puppy: 1");
}

TEST_CASE("vet-work: a step that many places reserve to veterinarians") {
  const auto extras = [](std::string_view words) {
    Pet dog = pet();
    dog.finish = {{FinishPart::extras, std::string(words), SaidBy::pet, line(17), false}};
    return fires(RuleId::vet_work, dog);
  };
  for (const std::string_view words :
       {"express anal sacs", "ear drops as left by the owner", "teeth scaling",
        "cut out mats behind the ears", "give medication at noon"}) {
    CHECK(extras(words));
  }
  for (const std::string_view words :
       {"no bow, no scent", "no anal sacs", "ears natural", "matted", ""}) {
    CHECK_FALSE(extras(words));
  }
  Pet dog = pet();
  dog.trim = {part("ears", Brush{}, Lay::with, {}, 12)};
  dog.trim[0].entry.note = "ear medication from the vet first";
  CHECK(fires(RuleId::vet_work, dog));
  CHECK(plan(salon(), dog).caution(RuleId::vet_work)->span.begin.line == 12);
}
