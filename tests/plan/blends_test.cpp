#include "plan/blends.h"

#include <algorithm>

#include "plan/made.h"

using namespace furnish;
using namespace furnish::made;

namespace {
std::vector<Blend> blends_of(const Salon& salon, const Pet& pet) {
  return blends(salon, pet, lengths_wished(salon, pet), nullptr);
}

Pet two(std::string_view a, Length la, std::string_view b, Length lb) {
  Pet dog = pet(Coat::drop);
  dog.trim = {part(a, shears(Shears::straight), Lay::with, la),
              part(b, shears(Shears::straight), Lay::with, lb)};
  return dog;
}
}  // namespace

TEST_CASE("a jump over both thresholds is blended, exactly at one is not") {
  const Salon shop = salon();                                          // 6 mm and 1.5 times
  CHECK(blends_of(shop, two("back", 10_mm, "sides", 16_mm)).empty());  // 6 mm: not more
  CHECK(blends_of(shop, two("back", 10_mm, "sides", 16001_um)).size() == 1);
  CHECK(blends_of(shop, two("back", 20_mm, "sides", 30_mm)).empty());  // 1.5 times: not more
  CHECK(blends_of(shop, two("back", 20_mm, "sides", 30001_um)).size() == 1);
  CHECK(blends_of(shop, two("back", 2_mm, "sides", 5_mm)).empty());   // 3 mm
  CHECK(blends_of(shop, two("back", 10_mm, "tail", 90_mm)).empty());  // no neighbours
}

TEST_CASE("the longer side is blended toward the shorter") {
  const auto found = blends_of(salon(), two("back", 10_mm, "sides", 40_mm));
  REQUIRE(found.size() == 1);
  CHECK(found[0].longer == at("sides"));
  CHECK(found[0].shorter.region == Region::back);
  CHECK(found[0].from == 10_mm);
  CHECK(found[0].to == 40_mm);
  CHECK(found[0].with == Shears::thinning);
}

TEST_CASE("the steps are the drawer's own, between the two, and leave no jump if they can") {
  Salon shop = salon();
  shop.kit = kit({"30", "10"}, {6_mm, 12_mm, 15_mm, 19_mm, 22_mm, 25_mm, 30_mm, 37_mm});
  const auto found = blends_of(shop, two("back", 10_mm, "sides", 40_mm));
  REQUIRE(found.size() == 1);
  REQUIRE_FALSE(found[0].steps.empty());
  Length at_now = 10_mm;
  std::vector<Length> lengths;
  for (const Tool& tool : found[0].steps) lengths.push_back(*nominal_length(tool, shop.kit));
  lengths.push_back(40_mm);
  for (const Length next : lengths) {
    CHECK(next > at_now);
    const bool jump = next - at_now > shop.blends.step && next.in_mm() > 1.5 * at_now.in_mm();
    CHECK_FALSE(jump);
    at_now = next;
  }
  // 10 reaches 15 (1.5 times, not more), 15 reaches 22, 22 reaches 30, 30 is near enough to 40. Two
  // cannot do: from 10 at most 15, and below 40 at least 27 is needed, which 15 does not reach.
  CHECK(found[0].steps.size() == 3);
}

TEST_CASE("a drawer with a gap gives what it has, one without shears says so") {
  Salon shop = salon();
  shop.kit = kit({"30"}, {30_mm}, {Shears::straight});
  const auto found = blends_of(shop, two("back", 10_mm, "sides", 60_mm));
  REQUIRE(found.size() == 1);
  CHECK(found[0].steps == std::vector<Tool>{comb(30_mm)});
  CHECK_FALSE(found[0].with);
}

TEST_CASE("a step never breaks a safety rule") {
  Salon shop = salon();
  shop.kit = kit({"30"}, {19_mm, 31_mm});
  Pet dog = two("sides", 60_mm, "belly", 8_mm);
  dog.coat = Coat::double_coat;
  const auto found = blends_of(shop, dog);
  REQUIRE(found.size() == 1);
  CHECK(found[0].longer.region == Region::sides);
  CHECK(found[0].steps == std::vector<Tool>{comb(31_mm)});  // 19 mm is under 25 on its body
}

TEST_CASE("no blend where the style wants a line, an alert avoids, or hygiene ends") {
  Pet dog = two("back", 10_mm, "sides", 40_mm);
  dog.style.emplace();
  dog.style->lines = {{Region::back, Region::sides}};
  CHECK(blends_of(salon(), dog).empty());
  dog.style->lines = {{Region::sides, Region::back}};
  CHECK(blends_of(salon(), dog).empty());
  dog.style->lines.clear();
  CHECK(blends_of(salon(), dog).size() == 1);
  dog.alerts = {avoiding("left side")};
  const auto one_sided = blends_of(salon(), dog);
  REQUIRE(one_sided.size() == 1);
  CHECK(one_sided[0].longer == at("right side"));
  dog.alerts = {avoiding("back")};
  CHECK(blends_of(salon(), dog).empty());
  CHECK(blends_of(salon(), two("feet", 20_mm, "pads", 1_mm)).empty());
  CHECK(blends_of(salon(), two("ears", 20_mm, "neck", 60_mm)).empty());
  CHECK(blends_of(salon(), two("ears", 60_mm, "crown", 20_mm)).size() == 1);
}

TEST_CASE("two natural lengths are as the dog wears them") {
  Pet dog = pet(Coat::double_coat);
  dog.trim = {part("neck", Brush{}), part("ruff", Brush{}, Lay::with)};
  dog.trim[0].entry.leave.reset();
  CHECK(blends_of(salon(), dog).empty());
  dog.trim[0] = part("neck", comb(Length::inches(1)));
  CHECK(blends_of(salon(), dog).size() == 1);  // 25.4 mm against 80
}

TEST_CASE("sides trimmed apart are blended apart") {
  Pet dog = pet(Coat::drop);
  dog.trim = {part("back", shears(Shears::straight), Lay::with, 10_mm),
              part("left side", shears(Shears::straight), Lay::with, 40_mm),
              part("right side", shears(Shears::straight), Lay::with, 12_mm)};
  const auto found = blends_of(salon(), dog);
  REQUIRE(found.size() == 1);
  CHECK(found[0].longer == at("left side"));
}
