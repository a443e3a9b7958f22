#include "plan/targets.h"

#include "plan/made.h"

using namespace furnish;
using namespace furnish::made;

namespace {
Visit left_at(std::string_view iso, Length length) {
  Visit out = visit(iso);
  out.went_out = {state("back", length)};
  return out;
}

Pet combed() {
  Pet dog = pet(Coat::curly);
  dog.trim = {part("back", comb(13_mm), Lay::with)};
  return dog;
}

std::vector<Target> of(const Pet& dog, const std::vector<Visit>& visits) {
  return plan(salon(), dog, visits).plan.targets;
}
}  // namespace

TEST_CASE("what was really left is the median of the visits that measured it") {
  const auto one = of(combed(), {left_at("2026-03-01", 16_mm)});
  REQUIRE(one.size() == 1);
  CHECK_FALSE(one[0].is_target());  // one visit is no target
  CHECK(one[0].median == 16_mm);
  CHECK(one[0].newest == day("2026-03-01"));
  const auto two = of(combed(), {left_at("2026-03-01", 16_mm), left_at("2026-05-01", 17_mm)});
  REQUIRE(two.size() == 1);
  CHECK(two[0].median == 16500_um);
  CHECK(two[0].newest == day("2026-05-01"));
  CHECK(two[0].visits == 2);
  CHECK(two[0].is_target());
  const auto four = of(combed(), {left_at("2026-03-01", 16_mm), left_at("2026-05-01", 30_mm),
                                  visit("2026-07-01"), left_at("2026-09-01", 15_mm)});
  CHECK(four.at(0).median == 16_mm);
  CHECK(four.at(0).newest == day("2026-09-01"));
  CHECK(four.at(0).visits == 3);
  CHECK(find_target(four, at("back")) == &four[0]);
  CHECK(find_target(four, at("belly")) == nullptr);
}

TEST_CASE("a visit that took another tool, or cut the other way, does not count") {
  Visit otherwise = left_at("2026-05-01", 6_mm);
  otherwise.done = {{at("back"), part("back", blade("4F")).entry}};
  const Visit first = left_at("2026-03-01", 16_mm), last = left_at("2026-07-01", 16_mm);
  CHECK(of(combed(), {otherwise}).empty());
  CHECK(of(combed(), {first, otherwise}).at(0).visits == 1);
  CHECK(of(combed(), {first, otherwise, last}).at(0).visits == 2);
  otherwise.done = {{at("back"), part("back", comb(13_mm), Lay::against).entry}};
  CHECK(of(combed(), {otherwise}).empty());
  CHECK(of(combed(), {first, otherwise}).at(0).visits == 1);
  // The same tool, and another place otherwise.
  otherwise.done = {{at("back"), part("back", comb(13_mm), Lay::with).entry},
                    {at("belly"), part("belly", blade("10")).entry}};
  CHECK(of(combed(), {first, otherwise}).at(0).visits == 2);
}

TEST_CASE("a substitute from the drawer counts with the lengths it leaves") {
  Salon shop = salon();
  shop.kit = kit({"30", "10"}, {16_mm});
  Pet dog = combed();
  dog.trim.push_back(part("belly", blade("10")));
  const Plan made = plan(shop, dog, {visit("2026-11-24")}).plan;
  REQUIRE(made.drawer.size() == 1);
  REQUIRE(made.lengths.size() == 2);
  CHECK(made.lengths[0].substitute);
  CHECK(made.lengths[0].left ==
        LengthRange{16_mm, 20_mm});  // a comb with the lay: to a quarter more
  CHECK_FALSE(made.lengths[1].substitute);
  CHECK(made.growth.at(0).left == LengthRange{16_mm, 20_mm});
  dog.trim = {part("back", comb(13_mm), Lay::against), part("sides", comb(16_mm), Lay::against)};
  // Both are 16 mm in the end; with every tool at hand there is a jump of 3 mm.
  shop.kit = kit({"30"}, {16_mm});
  shop.blends.step = 2_mm;
  shop.blends.ratio = 1.1;
  CHECK(plan(shop, dog).plan.blends.empty());
  shop.kit.reset();
  CHECK(plan(shop, dog).plan.blends.size() == 1);
}
