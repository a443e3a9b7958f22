#include "plan/drawer.h"

#include <random>

#include "plan/lengths.h"
#include "plan/made.h"
#include "plan/tool_rules.h"

using namespace furnish;
using namespace furnish::made;

namespace {
Salon with(Kit own) {
  Salon out = salon();
  out.kit = std::move(own);
  return out;
}

std::optional<Tool> instead_of(const TrimPart& wanted, const Salon& salon, const Pet& pet) {
  return substitute(wanted, salon, pet, nullptr);
}
}  // namespace

TEST_CASE("nobody said what is in the drawer: everything is") {
  CHECK(in_drawer(blade("3F"), std::nullopt));
  CHECK(in_drawer(blade("3F"), Kit{}));
  CHECK_FALSE(in_drawer(blade("3F"), kit({"10"}, {})));
  CHECK(in_drawer(Brush{}, kit({"10"}, {})));
  CHECK(in_drawer(HandStrip{}, kit({"10"}, {})));
}

TEST_CASE("a comb needs its length, give or take a hair, and its base") {
  const Kit own = kit({"30"}, {13_mm});
  CHECK(in_drawer(comb(Length::inches(1, 2)), own));
  CHECK_FALSE(in_drawer(comb(Length::inches(1, 2), "40"), own));
  CHECK_FALSE(in_drawer(comb(Length::inches(3, 8)), own));
  const auto gaps = [&] {
    Pet dog = pet();
    dog.trim = {part("hocks", comb(Length::inches(1, 2), "40"))};
    return drawer_gaps(with(own), dog, nullptr);
  }();
  REQUIRE(gaps.size() == 1);
  CHECK(*gaps[0].use == comb(13_mm, "30"));
  CHECK(*gaps[0].difference == 300_um);
}

TEST_CASE("the nearest, and of two as near the longer") {
  // #5F leaves 6.35 mm; combs of 5.35 and 7.35 mm are both a millimetre off.
  const Salon shop = with(kit({"30"}, {5350_um, 7350_um}));
  CHECK(*instead_of(part("back", blade("5F")), shop, pet()) == comb(7350_um));
  const Salon nearer = with(kit({"30"}, {5400_um, 7350_um}));
  CHECK(*instead_of(part("back", blade("5F")), nearer, pet()) == comb(5400_um));
}

TEST_CASE("of two as long, the same kind, then full teeth") {
  const Salon shop = with(kit({"30", "5", "5F"}, {6350_um}));
  CHECK(*instead_of(part("back", blade("4F")), shop, pet()) == blade("5F"));
  CHECK(*instead_of(part("back", comb(7_mm)), shop, pet()) == comb(6350_um));
}

TEST_CASE("a comb over either base: the wanted one, else the #30") {
  const Salon shop = with(kit({"40", "30"}, {6_mm}));
  CHECK(*instead_of(part("back", comb(7_mm, "40")), shop, pet()) == comb(6_mm, "40"));
  CHECK(*instead_of(part("back", blade("5F")), shop, pet()) == comb(6_mm, "30"));
}

TEST_CASE("nothing within six millimetres") {
  Pet dog = pet();
  dog.trim = {part("back", comb(Length::inches(1)))};
  const auto gaps = drawer_gaps(with(kit({"30", "10"}, {12_mm})), dog, nullptr);
  REQUIRE(gaps.size() == 1);
  CHECK_FALSE(gaps[0].use);
  CHECK_FALSE(gaps[0].difference);
  CHECK(drawer_gaps(with(kit({"30", "10"}, {19400_um})), dog, nullptr)[0].use);  // 6.0 mm
  CHECK_FALSE(drawer_gaps(with(kit({"30", "10"}, {19399_um})), dog, nullptr)[0].use);
}

TEST_CASE("a substitute keeps to the safety rules") {
  SECTION("sanitary: only a #10") {
    const TrimPart ten = part("sanitary", blade("10"));
    CHECK_FALSE(instead_of(ten, with(kit({"9", "15", "30"}, {})), pet()));
  }
  SECTION("pads: at most a #10") {
    const TrimPart pads = part("pads", blade("10"));
    CHECK(*instead_of(pads, with(kit({"9", "15"}, {})), pet()) == blade("15"));
    CHECK_FALSE(instead_of(pads, with(kit({"9"}, {})), pet()));
  }
  SECTION("thin skin: no skip teeth") {
    const TrimPart belly = part("belly", blade("7F"));
    CHECK(*instead_of(belly, with(kit({"7", "9"}, {})), pet()) == blade("9"));
    CHECK(*instead_of(part("back", blade("7F")), with(kit({"7", "9"}, {})), pet()) == blade("7"));
  }
  SECTION("no close blade on the body") {
    CHECK_FALSE(instead_of(part("back", blade("15")), with(kit({"30", "40"}, {})), pet()));
  }
  SECTION("a double coat stays over 25 mm, unless that is accepted") {
    Pet dog = pet(Coat::double_coat);
    const TrimPart back = part("back", comb(Length::inches(1)));
    const Salon shop = with(kit({"30"}, {22225_um, 31_mm}));
    CHECK(*instead_of(back, shop, dog) == comb(31_mm));
    dog.accepted.push_back(
        {{RuleId::double_coat_short, {}}, "owner's wish", day("2026-01-01"), {}});
    CHECK(*instead_of(back, shop, dog) == comb(22225_um));
  }
}

TEST_CASE("shears stand in for their like") {
  const auto tried = [](Shears wanted, std::vector<Shears> own) {
    return instead_of(part("chest", shears(wanted)), with(kit({"10"}, {}, std::move(own))), pet());
  };
  CHECK(*tried(Shears::curved, {Shears::straight}) == shears(Shears::straight));
  CHECK(*tried(Shears::thinning, {Shears::straight, Shears::blending}) == shears(Shears::blending));
  CHECK_FALSE(tried(Shears::thinning, {Shears::straight, Shears::curved}));
}

TEST_CASE("nothing is looked for where an alert keeps tools away") {
  Pet dog = pet();
  dog.trim = {part("hocks", blade("5F"))};
  dog.alerts = {avoiding("left hock")};
  const auto gaps = drawer_gaps(with(kit({"7F"}, {})), dog, nullptr);
  REQUIRE(gaps.size() == 1);
  CHECK(gaps[0].place == at("right hock"));
  dog.alerts.push_back(avoiding("right hock"));
  CHECK(drawer_gaps(with(kit({"7F"}, {})), dog, nullptr).empty());
}

// The oracle tries every tool of the drawer with the rule as its comment says it.
TEST_CASE("the substitute is what trying every tool finds") {
  std::mt19937 random(7);
  const auto some = [&](int of) { return static_cast<int>(random() % static_cast<unsigned>(of)); };
  int found = 0, none = 0;
  for (int round = 0; round < 4000; ++round) {
    Kit own;
    for (const Blade& one : blades()) {
      if (some(3) == 0) own.blades.push_back(&one);
    }
    for (const Length length : guard_combs()) {
      if (some(3) == 0) own.combs.push_back(length);
    }
    if (own.blades.empty()) continue;
    if (some(2) == 0) own.measured[own.blades[0]] = own.blades[0]->length() + 200_um;
    const Salon shop = with(own);
    Pet dog = pet(static_cast<Coat>(some(7)));
    if (some(4) == 0) dog.conditions.push_back({Condition::wrinkles, {}});
    TrimPart wanted = part("back", Clip{&blades()[static_cast<std::size_t>(some(17))]});
    if (some(2) == 0) wanted.entry.tool = comb(guard_combs()[static_cast<std::size_t>(some(10))]);
    wanted.place.region = static_cast<Region>(some(25));
    if (in_drawer(wanted.entry.tool, shop.kit)) continue;
    const Length goal = *nominal_length(wanted.entry.tool, shop.kit);

    std::optional<std::int64_t> best;  // signed, micrometres
    const auto consider = [&](const Tool& tool) {
      const Length left = *nominal_length(tool, shop.kit);
      const std::int64_t off = (left - goal).um();
      if (std::abs(off) > 6000) return;
      for (const RuleId id : tool_rules(tool, left, wanted.place, dog, nullptr)) {
        if (!is_standing(rule(id)) && id != RuleId::ear_mats) return;
      }
      if (!best || std::abs(off) < std::abs(*best) ||
          (std::abs(off) == std::abs(*best) && off > *best)) {
        best = off;
      }
    };
    for (const Blade* const one : own.blades) {
      consider(Clip{one});
      for (const Length length : own.combs) {
        if (one->name == "30" || one->name == "40") consider(CombOver{length, one});
      }
    }
    const auto got = instead_of(wanted, shop, dog);
    REQUIRE(got.has_value() == best.has_value());
    if (got) CHECK((*nominal_length(*got, shop.kit) - goal).um() == *best);
    ++(got ? found : none);
  }
  CHECK(found > 500);
  CHECK(none > 200);
}
