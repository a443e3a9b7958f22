#include "plan/bath.h"

#include "plan/made.h"

using namespace furnish;
using namespace furnish::made;

namespace {
constexpr Volume us_gallon = Volume::nanolitres(3'785'411'784);  // NIST Handbook 44, App. C

BathPlan bath_for(const Dilution& dilution, const Salon& shop = salon(),
                  std::optional<Mass> weight = Mass::kg(20)) {
  Pet dog = pet(Coat::smooth);
  dog.bath.shampoo = product("oat", dilution);
  return bath_plan(shop, dog, weight, day("2026-11-24"));
}
}  // namespace

// 0.101 · kg^(2/3): check points from a secondary copy of the published formula.
TEST_CASE("body surface") {
  CHECK(body_surface_m2(Mass::kg(1)) == Approx(0.1010).margin(0.00005));
  CHECK(body_surface_m2(Mass::kg(8)) == Approx(0.4040).margin(0.00005));
  CHECK(body_surface_m2(Mass::kg(10)) == Approx(0.4688).margin(0.00005));
  CHECK(body_surface_m2(Mass::kg(20)) == Approx(0.7442).margin(0.00005));
  CHECK(body_surface_m2(Mass::kg(27)) == Approx(0.9090).margin(0.00005));
  CHECK(body_surface_m2(Mass::kg(64)) == Approx(1.6160).margin(0.00005));
  // Printed veterinary tables, from memory.
  CHECK(body_surface_m2(Mass::kg(10)) == Approx(0.46).margin(0.02));
  CHECK(body_surface_m2(Mass::kg(20)) == Approx(0.74).margin(0.02));
  CHECK(body_surface_m2(Mass::kg(30)) == Approx(0.96).margin(0.021));
}

// Computed from the two meanings of a ratio: product = total / (r + 1), or total / r.
TEST_CASE("the two meanings of a ratio, per litre") {
  const auto to_one = [](double r) { return parts_of(Volume::ml(1000), {1, r + 1}).product; };
  const auto one_in = [](double r) { return parts_of(Volume::ml(1000), {1, r}).product; };
  CHECK(to_one(10).in_ml() == Approx(90.909).margin(0.0005));
  CHECK(one_in(10) == Volume::ml(100));
}

TEST_CASE("the two meanings of a ratio, per US gallon") {
  const auto to_one = [](double r) { return parts_of(us_gallon, {1, r + 1}).product; };
  const auto one_in = [](double r) { return parts_of(us_gallon, {1, r}).product; };
  CHECK(to_one(10).in_us_fl_oz() == Approx(11.636).margin(0.0005));
  CHECK(one_in(10).in_us_fl_oz() == Approx(12.8).margin(0.00005));
  CHECK(to_one(32).in_us_fl_oz() == Approx(3.8788).margin(0.00005));
  CHECK(one_in(32).in_us_fl_oz() == Approx(4.0).margin(0.00005));
  CHECK(to_one(128).in_us_fl_oz() == Approx(0.9922).margin(0.00005));
  CHECK(one_in(128).in_us_fl_oz() == Approx(1.0).margin(0.00005));
}

TEST_CASE("what a salon's file with faults may say of a mix is not known") {
  Salon shop = salon();
  shop.unread = {SalonPart::mixing};
  const BathPlan bath = bath_for({1, 11}, shop);
  CHECK_FALSE(bath.mixes.at(0).needed);
  CHECK_FALSE(bath.mixes.at(0).bottles);
  CHECK(bath.mixes.at(0).measured->product == Volume::ml(45));  // the bottle's own ratio is known
  Pet dog = pet(Coat::smooth);
  dog.bath.shampoo = product("oat", Dilution{1, 11});
  dog.bath.shampoo->product.dilution.reset();
  dog.bath.shampoo->product.medicated = dog.bath.shampoo->product.unread = true;
  const BathPlan unread = bath_plan(salon(), dog, Mass::kg(20), day("2026-11-24"));
  CHECK_FALSE(unread.mixes.at(0).measured);
  CHECK_FALSE(unread.mixes.at(0).dwell);
}

TEST_CASE("ten to one in the usual bottle: 45 ml product and 455 ml water") {
  const BathPlan bath = bath_for({1, 11});
  REQUIRE(bath.mixes.size() == 1);
  CHECK(bath.bottle == Volume::ml(500));
  CHECK(bath.mixes[0].exact->product.in_ml() == Approx(45.4545).margin(0.0005));
  CHECK(bath.mixes[0].measured->product == Volume::ml(45));
  CHECK(bath.mixes[0].measured->water == Volume::ml(455));
  CHECK_FALSE(bath.mixes[0].coarse);
}

TEST_CASE("in US units to a quarter of a fluid ounce") {
  Salon shop = salon();
  shop.units = Units::us;
  const BathPlan bath = bath_for({1, 11}, shop);
  CHECK(bath.bottle == Volume::us_fl_oz(16));
  CHECK(bath.mixes[0].measured->product == Volume::us_fl_oz(1.5));  // 1.4545 exactly
  CHECK(bath.mixes[0].measured->water.in_us_fl_oz() == Approx(14.5));
}

TEST_CASE("volumes always add up to the bottle, and measures are whole") {
  for (const Units units : {Units::metric, Units::us}) {
    for (int ml = 10; ml < 4000; ml += 37) {
      for (const double parts : {1.5, 2.0, 4.0, 5.0, 11.0, 16.0, 33.0, 129.0, 500.0}) {
        const Parts exact = parts_of(Volume::ml(ml), {1, parts});
        const Parts measured = measurable(exact, units);
        CHECK(exact.product + exact.water == Volume::ml(ml));
        CHECK(measured.product + measured.water == Volume::ml(ml));
        CHECK(measured.product > Volume());
        CHECK(measured.water >= Volume());
        if (measured.water == Volume()) continue;  // the bottle is smaller than the measure
        const double count = units == Units::metric ? measured.product.in_ml() / 5
                                                    : measured.product.in_us_fl_oz() * 4;
        CHECK(count == Approx(std::floor(count + 0.5)).margin(1e-6));
      }
    }
  }
}

TEST_CASE("a product so strong that the measure is coarse says so") {
  const BathPlan bath = bath_for({1, 129});  // 3.88 ml in 500
  CHECK(bath.mixes[0].measured->product == Volume::ml(5));
  CHECK(bath.mixes[0].coarse);
}

TEST_CASE("undiluted, and nobody said") {
  const BathPlan neat = bath_for({1, 1});
  CHECK(neat.mixes[0].neat);
  CHECK(neat.mixes[0].measured->product == Volume::ml(500));
  CHECK(neat.mixes[0].measured->water == Volume());
  Pet dog = pet(Coat::smooth);
  dog.bath.shampoo = product("mystery", std::nullopt);
  const BathPlan unknown = bath_plan(salon(), dog, Mass::kg(20), day("2026-11-24"));
  CHECK_FALSE(unknown.mixes[0].exact);
  CHECK_FALSE(unknown.mixes[0].measured);
  CHECK_FALSE(unknown.mixes[0].neat);
}

TEST_CASE("bottles from surface and coat") {
  // 20 kg are 0.7442 m²; at 0.7 l a square metre (smooth; common practice) 0.521 l: two bottles.
  const BathPlan bath = bath_for({1, 11});
  CHECK(bath.mixes[0].needed->in_ml() == Approx(520.9).margin(0.1));
  CHECK(bath.mixes[0].bottles == 2);
  CHECK(bath.mixes[0].for_dog->product.in_ml() == Approx(520.9 / 11).margin(0.05));
  Salon own = salon();
  own.mix_per_m2[static_cast<std::size_t>(Coat::smooth)] = 0.6;
  CHECK(bath_for({1, 11}, own).mixes[0].bottles == 1);
  CHECK_FALSE(bath_for({1, 11}, salon(), std::nullopt).mixes[0].needed);
}

TEST_CASE("an exactly full bottle is one bottle") {
  Salon own = salon();
  own.kit.emplace();
  own.kit->bottle = bath_for({1, 11}).mixes[0].needed;
  CHECK(bath_for({1, 11}, own).mixes[0].bottles == 1);
  own.kit->bottle = Volume::nanolitres(own.kit->bottle->nl() - 1);
  CHECK(bath_for({1, 11}, own).mixes[0].bottles == 2);
}

TEST_CASE("several dogs add up, product by product") {
  Pet a = pet(Coat::smooth), b = pet(Coat::curly), c = pet();
  a.bath.shampoo = b.bath.shampoo = c.bath.shampoo = product("oat", Dilution{1, 11});
  b.bath.conditioner = product("nourish", Dilution{1, 5});
  const std::vector<BathPlan> baths{bath_plan(salon(), a, Mass::kg(20), day("2026-11-24")),
                                    bath_plan(salon(), b, Mass::kg(8), day("2026-11-24")),
                                    bath_plan(salon(), c, Mass::kg(8), day("2026-11-24"))};
  const auto totals = bath_totals(baths);
  REQUIRE(totals.size() == 2);
  CHECK(totals[1].product == "oat");
  CHECK(totals[1].dogs == 2);
  CHECK(totals[1].unknown == 1);  // a coat nobody named
  CHECK(totals[1].parts.total == *baths[0].mixes[0].needed + *baths[1].mixes[0].needed);
  CHECK(totals[1].parts.product + totals[1].parts.water == totals[1].parts.total);
}

TEST_CASE("the same product in two dilutions is two mixes, the stronger first") {
  Pet a = pet(Coat::smooth), b = pet(Coat::smooth), c = pet(Coat::smooth);
  a.bath.shampoo = product("oat", Dilution{1, 11});
  b.bath.shampoo = product("oat", Dilution{1, 5});
  c.bath.shampoo = product("oat", Dilution{1, 1});
  std::vector<BathPlan> baths;
  for (const Pet* const dog : {&a, &b, &c}) {
    baths.push_back(bath_plan(salon(), *dog, Mass::kg(20), day("2026-11-24")));
  }
  const auto totals = bath_totals(baths);
  REQUIRE(totals.size() == 3);
  CHECK(totals[0].neat);
  CHECK(totals[1].measured->product.in_ml() == Approx(100));
  CHECK(totals[2].measured->product.in_ml() == Approx(45));
  for (const ProductTotal& total : totals) {
    CHECK(total.dogs == 1);
    CHECK(total.bottles == 2);  // 520.9 ml in bottles of 500
  }
}

TEST_CASE("dwell: planned, else the label's, else ten minutes where medicated") {
  // MSD Veterinary Manual, owner's table of topical treatments: 10 min.
  Pet dog = pet(Coat::smooth);
  dog.bath.shampoo = product("plain");
  const auto dwell = [&] { return bath_plan(salon(), dog, {}, day("2026-11-24")).mixes[0].dwell; };
  CHECK_FALSE(dwell());
  dog.bath.shampoo->product.medicated = true;
  CHECK(dwell() == std::chrono::minutes(10));
  dog.bath.shampoo->product.dwell = std::chrono::minutes(5);
  CHECK(dwell() == std::chrono::minutes(5));
  dog.bath.shampoo->dwell = std::chrono::minutes(7);
  CHECK(dwell() == std::chrono::minutes(7));
}

TEST_CASE("rinse, age of the bottle, and no bath") {
  Pet dog = pet(Coat::double_coat);
  dog.bath.shampoo = product("oat");
  dog.bath.shampoo->product.mixed = day("2026-11-20");
  const BathPlan bath = bath_plan(salon(), dog, Mass::kg(20), day("2026-11-24"));
  CHECK(bath.rinse == std::chrono::minutes(7));  // 10 · 0.7442
  CHECK(bath.mixes[0].age == std::chrono::days(4));
  CHECK(bath_plan(salon(), dog, Mass::kg(1), day("2026-11-24")).rinse == std::chrono::minutes(2));
  dog.bath.none = true;
  CHECK(bath_plan(salon(), dog, Mass::kg(20), day("2026-11-24")).mixes.empty());
}
