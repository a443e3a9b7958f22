#include "plan/clinical.h"

#include "plan/consents.h"
#include "plan/made.h"

using namespace furnish;
using namespace furnish::made;

// A flat face: Hall, Carter, O'Neill, Scientific Reports 2020; the rest common practice, no source.
TEST_CASE("what must not overheat is the same dog for every rule and page") {
  Pet dog = pet(Coat::smooth);
  CHECK_FALSE(must_not_overheat(dog, AgeGroup::adult));
  CHECK_FALSE(must_not_overheat(dog, AgeGroup::unknown));
  CHECK(must_not_overheat(dog, AgeGroup::senior));
  CHECK(must_not_overheat(dog, AgeGroup::puppy));
  CHECK(short_of_breath(dog, AgeGroup::senior));
  CHECK_FALSE(short_of_breath(dog, AgeGroup::puppy));
  for (const Condition one : {Condition::heart_disease, Condition::collapsing_trachea}) {
    dog.conditions = {{one, {}}};
    CHECK(must_not_overheat(dog, AgeGroup::adult));
    CHECK(short_of_breath(dog, AgeGroup::adult));
  }
  for (const Condition one : {Condition::arthritis, Condition::blind, Condition::seizures}) {
    dog.conditions = {{one, {}}};
    CHECK_FALSE(must_not_overheat(dog, AgeGroup::adult));
  }
  dog.conditions.clear();
  for (const NoseLength nose : {NoseLength::medium, NoseLength::long_nose}) {
    dog.build.nose = nose;
    CHECK_FALSE(must_not_overheat(dog, AgeGroup::adult));
  }
  dog.build.nose = NoseLength::short_nose;
  CHECK(must_not_overheat(dog, AgeGroup::adult));
}

// University of Minnesota, open textbook of animal dermatology, 1.13; the length common practice.
TEST_CASE("the body of a double coat is too short under 25 mm") {
  const Pet dog = pet(Coat::double_coat);
  CHECK(too_short_for_double_coat(dog, Region::back, 24_mm));
  CHECK_FALSE(too_short_for_double_coat(dog, Region::back, 25_mm));
  CHECK_FALSE(too_short_for_double_coat(dog, Region::ears, 3_mm));
  CHECK_FALSE(too_short_for_double_coat(pet(Coat::curly), Region::back, 3_mm));
  CHECK_FALSE(too_short_for_double_coat(pet(), Region::back, 3_mm));
}

namespace {
Consent to(const char* what) {
  Consent out;
  out.to = what;
  return out;
}

std::vector<ConsentTo> missing(const Pet& dog, const Visit& visit, std::string_view language) {
  const Made made = plan(salon(), dog, {visit});
  return consents_missing(visit, dog, made.plan.growth, made.plan.cautions, language);
}
}  // namespace

TEST_CASE("a consent is known by its English words, in other languages by being there") {
  const std::vector mats{to("cutting out mats")}, clip{to("Shaving her short")},
      other{to("photos")};
  CHECK(agreed_to(mats, ConsentTo::cutting_out, "en-GB"));
  CHECK_FALSE(agreed_to(mats, ConsentTo::clipping_short, "en-GB"));
  CHECK(agreed_to(clip, ConsentTo::clipping_short, "en"));
  CHECK_FALSE(agreed_to(clip, ConsentTo::cutting_out, "en"));
  CHECK_FALSE(agreed_to(other, ConsentTo::cutting_out, "en"));
  CHECK(agreed_to(other, ConsentTo::cutting_out, "de"));
  CHECK_FALSE(agreed_to({}, ConsentTo::cutting_out, "de"));
}

TEST_CASE("a consent is missing where mats are cut out or a double coat is left short") {
  Pet dog = pet(Coat::double_coat);
  dog.trim = {part("back", comb(30_mm), Lay::with)};
  Visit came = visit("2026-11-24");
  CHECK(missing(dog, came, "en").empty());
  came.came_in.regions = {state("ears", {}, 2)};
  CHECK(missing(dog, came, "en").empty());
  came.came_in.regions = {state("ears", {}, 3)};
  CHECK(missing(dog, came, "en") == std::vector{ConsentTo::cutting_out});
  came.consents = {to("felted ears")};
  CHECK(missing(dog, came, "en").empty());
  dog.trim = {part("back", blade("7F"))};
  CHECK(missing(dog, came, "en") == std::vector{ConsentTo::clipping_short});
  // What the pet's file accepts on purpose is agreed to, from the day it was signed on.
  dog.accepted = {{{RuleId::double_coat_short, {}}, "as she likes it", day("2026-11-25"), {}}};
  CHECK(missing(dog, came, "en") == std::vector{ConsentTo::clipping_short});
  dog.accepted.front().signed_on = day("2026-11-24");
  CHECK(missing(dog, came, "en").empty());
}
