#include "plan/made.h"

using namespace furnish;
using namespace furnish::made;
using std::chrono::minutes;

namespace {
bool fires(RuleId id, const Pet& dog, const std::vector<Visit>& visits = {},
           const Salon& shop = salon(), std::string_view today = "2026-11-24") {
  return plan(shop, dog, visits, today).caution(id) != nullptr;
}

Pet dried(std::string_view handling, std::string_view bath = {}) {
  Pet dog = pet();
  dog.handling.dryer = handling;
  dog.handling.dryer_span = line(11);
  if (!bath.empty()) dog.bath.dry = Located<std::string>{std::string(bath), line(23)};
  return dog;
}

Visit matted(int grade) {
  Visit out = visit("2026-11-24");
  out.came_in.regions.push_back(state("left ear", std::nullopt, grade));
  return out;
}
}  // namespace

TEST_CASE("mats-before-water: mats, and water before the comb") {
  Pet dog = pet();
  CHECK_FALSE(fires(RuleId::mats_before_water, dog, {matted(2)}));  // brushed before
  dog.bath.before.reset();
  CHECK(fires(RuleId::mats_before_water, dog, {matted(1)}));
  CHECK_FALSE(fires(RuleId::mats_before_water, dog, {matted(0)}));
  CHECK_FALSE(fires(RuleId::mats_before_water, dog));
  dog.bath.before = Located<std::string>{"no brushing, straight into the tub", line(20)};
  CHECK(fires(RuleId::mats_before_water, dog, {matted(1)}));
  // Felt is clipped, never combed through.
  CHECK(fires(RuleId::mats_before_water, dog, {matted(3)}));
  CHECK_FALSE(fires(RuleId::mats_before_water, dog, {matted(4)}));
  Visit one_side = matted(4);
  one_side.came_in.regions.push_back(state("ears", std::nullopt, 2));
  CHECK(plan(salon(), dog, {one_side}).caution(RuleId::mats_before_water)->places ==
        std::vector<Place>{at("right ear")});
  dog.bath.none = true;
  CHECK_FALSE(fires(RuleId::mats_before_water, dog, {matted(3)}));
}

TEST_CASE("prebrush: double, curly or drop coat into the water unbrushed") {
  for (const CoatInfo& coat : coats()) {
    const bool needs =
        coat.coat == Coat::double_coat || coat.coat == Coat::curly || coat.coat == Coat::drop;
    Pet dog = pet(coat.coat);
    CHECK_FALSE(fires(RuleId::prebrush, dog));
    dog.bath.before.reset();
    CHECK(fires(RuleId::prebrush, dog) == needs);
    dog.bath.none = true;
    CHECK_FALSE(fires(RuleId::prebrush, dog));
  }
  CHECK_FALSE(fires(RuleId::prebrush, pet()));
}

TEST_CASE("dryer-face: a force dryer that nothing keeps off the head") {
  CHECK(fires(RuleId::dryer_face, dried("force dryer")));
  CHECK(fires(RuleId::dryer_face, dried("force dryer, cover the ears")));
  CHECK_FALSE(fires(RuleId::dryer_face, dried("force dryer, not on the head")));
  CHECK_FALSE(fires(RuleId::dryer_face, dried("force dryer, head by hand with a towel")));
  CHECK_FALSE(fires(RuleId::dryer_face, dried("towel and stand dryer")));
  CHECK_FALSE(fires(RuleId::dryer_face, dried("never force dryer")));
  // What one line spares the other need not repeat.
  CHECK_FALSE(fires(RuleId::dryer_face,
                    dried("force dryer, not on the head", "towel, then force dryer with the lay")));
  CHECK(fires(RuleId::dryer_face, dried("", "towel, then force dryer with the lay")));
  Pet none = dried("force dryer");
  none.bath.none = true;
  CHECK_FALSE(fires(RuleId::dryer_face, none));
}

// Hall, Carter, O'Neill, Scientific Reports 2020: odds of heat illness; the rest common practice.
TEST_CASE("dryer-heat: heated or in a cage, graver for those whom heat kills first") {
  CHECK(fires(RuleId::dryer_heat, dried("heated dryer")));
  CHECK(fires(RuleId::dryer_heat, dried("cage dryer without heat")));
  CHECK_FALSE(fires(RuleId::dryer_heat, dried("no heated dryer")));
  CHECK_FALSE(fires(RuleId::dryer_heat, dried("without a cage dryer")));
  CHECK_FALSE(fires(RuleId::dryer_heat, dried("force dryer")));
  const auto signal = [](const Pet& dog) {
    return plan(salon(), dog).caution(RuleId::dryer_heat)->signal;
  };
  Pet dog = dried("heated dryer");
  CHECK(signal(dog) == Signal::warning);
  dog.build.nose = NoseLength::medium;
  CHECK(signal(dog) == Signal::warning);
  dog.build.nose = NoseLength::short_nose;
  CHECK(signal(dog) == Signal::danger);
  dog.build.nose.reset();
  dog.conditions = {{Condition::heart_disease, {}}};
  CHECK(signal(dog) == Signal::danger);
  dog.conditions = {{Condition::arthritis, {}}};
  CHECK(signal(dog) == Signal::warning);
  dog.born = Birth{day("2016-11-23"), {}};
  CHECK(signal(dog) == Signal::danger);
  dog.born->value = day("2016-11-24");  // ten today, not over
  CHECK(signal(dog) == Signal::warning);
  dog.born->value = day("2026-05-25");
  CHECK(signal(dog) == Signal::danger);
}

TEST_CASE("a dryer that another line rules out is not warned of, and what is planned instead is") {
  const auto quiet = dried("quiet air only", "force dryer, warm");
  CHECK(plan(salon(), quiet).plan.drying.words == "quiet air only");
  CHECK_FALSE(fires(RuleId::dryer_face, quiet));
  CHECK_FALSE(fires(RuleId::dryer_heat, quiet));
  CHECK(fires(RuleId::against_handling, quiet));
  Pet shaken = quiet;
  shaken.conditions = {{Condition::seizures, {}}};
  CHECK_FALSE(fires(RuleId::dryer_seizure, shaken));
  // The bath's own line is the stricter one.
  CHECK_FALSE(fires(RuleId::dryer_heat, dried("heated dryer", "force dryer, no heat")));
  CHECK(fires(RuleId::dryer_face, dried("heated dryer", "force dryer, no heat")));
  CHECK_FALSE(
      fires(RuleId::dryer_face, dried("heated dryer, not on the head", "force dryer, no heat")));
  // What is planned instead has a fault of its own, at its own line.
  const Made warm = plan(salon(), dried("no force dryer, warm air", "force dryer"));
  CHECK(warm.plan.drying.ruled_out);
  REQUIRE(warm.caution(RuleId::dryer_heat) != nullptr);
  CHECK(warm.caution(RuleId::dryer_heat)->span.begin.line == 11);
  CHECK(warm.caution(RuleId::dryer_face) == nullptr);
}

TEST_CASE("dryer-seizure: a force dryer and seizures or a weak heart") {
  Pet dog = dried("force dryer, not on the head");
  CHECK_FALSE(fires(RuleId::dryer_seizure, dog));
  dog.conditions = {{Condition::seizures, {}}};
  CHECK(fires(RuleId::dryer_seizure, dog));
  dog.conditions = {{Condition::heart_disease, {}}};
  CHECK(fires(RuleId::dryer_seizure, dog));
  dog.conditions = {{Condition::blind, {}}};
  CHECK_FALSE(fires(RuleId::dryer_seizure, dog));
  dog = dried("towel only");
  dog.conditions = {{Condition::seizures, {}}};
  CHECK_FALSE(fires(RuleId::dryer_seizure, dog));
}

TEST_CASE("a dryer's caution points at the line that wants it") {
  const Made bath = plan(salon(), dried("towel first", "heated dryer"));
  CHECK(bath.caution(RuleId::dryer_heat)->span.begin.line == 23);
  const Made handling = plan(salon(), dried("heated dryer", "towel"));
  CHECK(handling.caution(RuleId::dryer_heat)->span.begin.line == 11);
}

TEST_CASE("allergen: a planned product contains what an alert names") {
  Pet dog = pet();
  dog.bath.shampoo = product("soft shampoo");
  dog.bath.shampoo->product.contains = {"colloidal oatmeal", "goat milk", "tea-tree oil"};
  const auto allergic_to = [&](std::string_view what) {
    Pet out = dog;
    out.alerts.emplace_back();
    out.alerts[0].allergens.push_back({std::string(what), line(9)});
    return fires(RuleId::allergen, out);
  };
  CHECK_FALSE(fires(RuleId::allergen, dog));
  CHECK(allergic_to("oat"));
  CHECK(allergic_to("Tea tree"));
  CHECK_FALSE(allergic_to("lanolin"));
  dog.bath.shampoo->product.contains = {"goat milk"};
  CHECK_FALSE(allergic_to("oat"));
  dog.bath.shampoo->product.name = "oat shampoo";
  CHECK(allergic_to("oat"));
  dog.bath.others = {product("lanolin spray")};
  CHECK(allergic_to("lanolin"));
  dog.bath.none = true;
  CHECK_FALSE(allergic_to("lanolin"));
}

TEST_CASE("allergen: by the beginnings of words, whichever of the two is longer") {
  Pet dog = pet();
  dog.bath.shampoo = product("soft shampoo");
  dog.alerts.emplace_back();
  dog.alerts[0].allergens = {{"oatmeal", line(9)}};
  dog.bath.shampoo->product.contains = {"oats"};
  CHECK(fires(RuleId::allergen, dog));
  dog.bath.shampoo->product.contains = {"goat milk"};
  CHECK_FALSE(fires(RuleId::allergen, dog));
}

TEST_CASE("allergen: an alert whose words say what it is allergic to needs no list") {
  Pet dog = pet();
  dog.bath.shampoo = product("bright shampoo");
  dog.bath.shampoo->product.contains = {"violet dye", "lavender oil"};
  dog.alerts.emplace_back().text = "Allergic to lavender: hives.";
  const Made made = plan(salon(), dog);
  REQUIRE(made.caution(RuleId::allergen) != nullptr);
  CHECK(said(made.caution(RuleId::allergen)->what) == "allergen: bright shampoo; lavender oil");
  // the list names the same thing: once
  dog.alerts[0].allergens = {{"lavender", line(9)}};
  CHECK(said(plan(salon(), dog).caution(RuleId::allergen)->what) ==
        "allergen: bright shampoo; lavender");
  dog.alerts[0].allergens.clear();
  dog.alerts[0].text = "Not allergic to lavender.";
  CHECK_FALSE(fires(RuleId::allergen, dog));
  dog.alerts[0].text = "Itches.";
  dog.alerts[0].action = "Has an allergy to violet dye";
  CHECK(fires(RuleId::allergen, dog));
}

// MSD Veterinary Manual, owner's table of topical treatments: 10 min where the label says nothing.
TEST_CASE("dwell-short: a medicated product rinsed off before its time") {
  Pet dog = pet();
  dog.bath.shampoo = product("medical wash");
  Product& wash = dog.bath.shampoo->product;
  auto& planned = dog.bath.shampoo->dwell;
  wash.medicated = true;
  CHECK_FALSE(fires(RuleId::dwell_short, dog));  // nothing planned: ten minutes are
  planned = minutes(10);
  CHECK_FALSE(fires(RuleId::dwell_short, dog));
  planned = std::chrono::seconds(599);
  CHECK(fires(RuleId::dwell_short, dog));
  wash.dwell = minutes(5);
  CHECK_FALSE(fires(RuleId::dwell_short, dog));
  planned = std::chrono::seconds(299);
  CHECK(fires(RuleId::dwell_short, dog));
  wash.medicated = false;
  CHECK_FALSE(fires(RuleId::dwell_short, dog));
}

// Diluted products: PMC9542640, odds of Pseudomonas 15.5 times those of undiluted.
TEST_CASE("mix-age: a diluted bottle older than the salon keeps it") {
  Pet dog = pet();
  dog.bath.shampoo = product("oat");
  CHECK_FALSE(fires(RuleId::mix_age, dog));  // nobody said when
  dog.bath.shampoo->product.mixed = day("2026-11-24");
  CHECK_FALSE(fires(RuleId::mix_age, dog));  // today
  dog.bath.shampoo->product.mixed = day("2026-11-23");
  CHECK(fires(RuleId::mix_age, dog));
  Salon shop = salon();
  shop.mix_keeps = std::chrono::days(1);
  CHECK_FALSE(fires(RuleId::mix_age, dog, {}, shop));
  CHECK(fires(RuleId::mix_age, dog, {}, shop, "2026-11-25"));
  dog.bath.shampoo->product.dilution = Located<Dilution>{{1, 1}, {}};  // undiluted
  CHECK_FALSE(fires(RuleId::mix_age, dog, {}, salon(), "2027-11-25"));
}
