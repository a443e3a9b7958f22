#include "trade/refusals.h"

#include <catch2/catch.hpp>

#include <algorithm>

namespace furnish {
namespace {
bool ruled(std::string_view words, const Tool& tool, Region region = Region::back,
           Refusing how = Refusing::rules) {
  return std::ranges::any_of(read_refusals(words, how), [&](const Refusal& one) {
    return refuses(one, tool, {region, Side::both});
  });
}
const Tool thinning = Scissor{Shears::thinning}, straight = Scissor{Shears::straight};
const Tool blade = Clip{find_blade("10")}, comb = CombOver{13_mm, find_blade("30")};
const Tool hand = HandStrip{Strip::hand}, knife = HandStrip{Strip::knife};
}  // namespace

TEST_CASE("free words rule tools out only where they take them back") {
  CHECK(ruled("no thinning shears", thinning));
  CHECK(ruled("never thinners", thinning));
  CHECK_FALSE(ruled("thinning shears on the chest", thinning));
  CHECK_FALSE(ruled("no thinning shears", straight));
  CHECK_FALSE(ruled("straight shears, not thinning shears", straight));
  CHECK(ruled("no scissors", straight));
  CHECK(ruled("no scissors", thinning));
  CHECK(ruled("hold the chin; no clippers", blade));
  CHECK(ruled("no clippers", comb));
  CHECK(ruled("no guard combs", comb));
  CHECK_FALSE(ruled("no guard combs", blade));
  CHECK(ruled("no stripping", hand));
  CHECK(ruled("no stripping knife", knife));
  CHECK_FALSE(ruled("no stripping knife", hand));
  CHECK(ruled("no clipper", blade));
  CHECK_FALSE(ruled("no clipper lines", blade));
  CHECK_FALSE(ruled("no nail clippers", blade));
  CHECK_FALSE(ruled("no nail clipper", blade));
  CHECK_FALSE(ruled("", thinning));
}

TEST_CASE("a region in the clause says where") {
  CHECK(ruled("no thinning shears on the ears", thinning, Region::ears));
  CHECK_FALSE(ruled("no thinning shears on the ears", thinning, Region::back));
  CHECK(ruled("no clippers on the front legs", blade, Region::front_legs));
  CHECK(ruled("no clippers on the head", blade, Region::cheeks));
  CHECK_FALSE(ruled("no clippers on the head", blade, Region::rump));
}

TEST_CASE("a list of dislikes rules out what it names, but not the marks of a tool") {
  CHECK(ruled("thinning shears", thinning, Region::back, Refusing::dislikes));
  CHECK(ruled("no thinning shears", thinning, Region::back, Refusing::dislikes));
  CHECK(ruled("clippers", blade, Region::back, Refusing::dislikes));
  for (const char* words : {"clipper lines", "scissor marks", "rounded ears", "a clipped look"}) {
    CHECK_FALSE(ruled(words, blade, Region::back, Refusing::dislikes));
    CHECK_FALSE(ruled(words, straight, Region::back, Refusing::dislikes));
  }
}
}  // namespace furnish
