#include "plan/made.h"

using namespace furnish;
using namespace furnish::made;

TEST_CASE("visits out of order are put in order") {
  Pet dog = pet();
  dog.visit_every = Located<CalendarSpan>{std::chrono::days(56), {}};
  const Made made =
      plan(salon(), dog, {visit("2026-11-01"), visit("2026-03-01"), visit("2026-08-01")});
  CHECK(made.plan.next_visit->last == day("2026-11-01"));
  CHECK(made.sink.all().empty());
}

TEST_CASE("a visit in the future, or before birth, is left out with a message") {
  Pet dog = pet();
  dog.born = Birth{day("2021-04-09"), line(2)};
  Visit future = visit("2062-11-24"), early = visit("2021-04-08");
  future.minutes = early.minutes = std::chrono::minutes(5);
  const Made made = plan(salon(), dog, {future, early, visit("2021-04-09")});
  CHECK(made.says("visit-after-today"));
  CHECK(made.says("visit-before-birth"));
  CHECK(made.sink.all().size() == 2);
  CHECK_FALSE(made.plan.duration);
  CHECK_FALSE(made.sink.has_errors());
}

TEST_CASE("a visit of today counts") {
  Visit now = visit("2026-11-24");
  now.minutes = std::chrono::minutes(70);
  CHECK(plan(salon(), pet(), {now}).plan.duration->visits == 1);
}

TEST_CASE("a product without dilution: no volumes, and it says so") {
  Pet dog = pet();
  dog.bath.shampoo = product("mystery", std::nullopt);
  CHECK(plan(salon(), dog).says("no-dilution"));
  dog.bath.shampoo->product.dilution = Located<Dilution>{{1, 11}, {}};
  CHECK_FALSE(plan(salon(), dog).says("no-dilution"));
  dog.bath.others = {product("shine", std::nullopt)};
  dog.bath.others[0].product.kind = ProductKind::spray;  // ready to use
  CHECK_FALSE(plan(salon(), dog).says("no-dilution"));
}

TEST_CASE("a slip in an allergen, which no product contains and one nearly does") {
  Salon shop = salon();
  shop.products.emplace_back().name = "bright shampoo";
  shop.products[0].contains = {"violet dye", "Lavender oil", "oat"};
  Pet dog = pet();
  const auto warned = [&](std::string_view allergen) {
    dog.alerts = {{}};
    dog.alerts[0].allergens = {{std::string(allergen), line(9)}};
    return plan(shop, dog);
  };
  const Made slip = warned("lavendar");
  REQUIRE(slip.says("unknown-allergen"));
  CHECK(slip.sink.all()[0].hint == "did you mean 'lavender'?");
  CHECK(slip.sink.all()[0].span == line(9));
  CHECK_FALSE(slip.sink.has_errors());
  CHECK(warned("LAVENDAR").says("unknown-allergen"));
  CHECK(warned("violet die").says("unknown-allergen"));
  CHECK_FALSE(warned("lavender").says("unknown-allergen"));
  CHECK_FALSE(warned("oatmeal").says("unknown-allergen"));
  CHECK_FALSE(warned("coconut").says("unknown-allergen"));  // nothing is near
  dog.bath.shampoo = product("own shampoo");
  dog.bath.shampoo->product.contains = {"lanolin"};
  CHECK(warned("lanolyn").says("unknown-allergen"));
}

TEST_CASE("a tool that nothing in the drawer can stand in for") {
  Salon shop = salon();
  shop.kit = kit({"30", "10"}, {});
  Pet dog = pet(Coat::drop);
  dog.trim = {part("back", comb(Length::inches(3, 2)))};
  CHECK(plan(shop, dog).says("nothing-in-drawer"));
  shop.kit->combs = {38_mm};
  CHECK_FALSE(plan(shop, dog).says("nothing-in-drawer"));
}

TEST_CASE("a length that this coat never has") {
  Pet dog = pet(Coat::smooth);  // 15 mm (common practice, no source)
  dog.trim = {part("back", comb(Length::inches(1)))};
  CHECK(plan(salon(), dog).says("longer-than-coat"));
  dog.trim = {part("back", blade("5F"))};
  CHECK_FALSE(plan(salon(), dog).says("longer-than-coat"));
  dog.coat = Coat::curly;
  dog.trim = {part("back", comb(Length::inches(1)))};
  CHECK_FALSE(plan(salon(), dog).says("longer-than-coat"));
}

TEST_CASE("days in the future are named, and not counted") {
  Pet dog = pet();
  dog.born = Birth{day("2027-01-01"), line(2)};
  dog.vaccinations = {{"rabies", {day("2027-01-01"), line(6)}, false}};
  const Made made = plan(salon(), dog);
  CHECK(made.sink.all().size() == 2);
  CHECK(made.plan.health.age_group == AgeGroup::unknown);
}

TEST_CASE("a dryer that the handling rules out and the bath uses") {
  Pet dog = pet();
  dog.handling.dryer = "never force dryer";
  dog.bath.dry = Located<std::string>{"force dryer, not on the head", line(23)};
  const Made made = plan(salon(), dog);
  REQUIRE(made.caution(RuleId::against_handling) != nullptr);
  CHECK(made.caution(RuleId::against_handling)->span.begin.line == 23);
  CHECK(made.plan.drying.words == "never force dryer");
  dog.bath.dry->value = "towel";
  CHECK(plan(salon(), dog).count(RuleId::against_handling) == 0);
}

TEST_CASE("an empty pet has a plan") {
  const Made made = plan(salon(), Pet{});
  CHECK(made.plan.lengths.empty());
  CHECK(made.plan.next_visit->reason == DueReason::no_visit);
  CHECK_FALSE(made.plan.duration);
  CHECK(made.sink.all().empty());
}
