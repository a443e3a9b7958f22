#include "trade/region.h"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace furnish;

TEST_CASE("every region reads back under its key, its name and one of its pair") {
  for (const RegionInfo& row : regions()) {
    INFO(row.key);
    CHECK(parse_place(row.key) == Place{row.region, Side::both});
    CHECK(parse_place(row.name) == Place{row.region, Side::both});
    CHECK(parse_place(row.one) == Place{row.region, Side::both});
    const std::string left = "left " + std::string(row.one);
    CHECK(parse_place(left).has_value() == row.paired);
    CHECK(parse_place(left, AnySide::yes) == Place{row.region, Side::left});
  }
  CHECK(parse_place("left-hock") == Place{Region::hocks, Side::left});
  CHECK(parse_place("Right_Front_Leg") == Place{Region::front_legs, Side::right});
  for (const char* const no : {"", "left", "left left hock", "elbow", "left belly"}) {
    CHECK_FALSE(parse_place(no));
  }
}

TEST_CASE("places in words") {
  CHECK(to_text(Place{Region::hocks, Side::left}) == "left hock");
  CHECK(to_text(Place{Region::hocks, Side::both}) == "hocks");
  CHECK(to_text(Place{Region::belly, Side::left}) == "belly, left");
}

TEST_CASE("what meets what") {
  const Place both{Region::hocks, Side::both}, left{Region::hocks, Side::left},
      right{Region::hocks, Side::right};
  CHECK(meets(both, left));
  CHECK(meets(left, both));
  CHECK_FALSE(meets(left, right));
  CHECK_FALSE(meets(both, Place{Region::feet, Side::both}));
}

TEST_CASE("neighbours are symmetric, and every region has one") {
  for (const RegionInfo& a : regions()) {
    CHECK_FALSE(adjacent(a.region, a.region));
    CHECK(std::ranges::any_of(regions(),
                              [&](const RegionInfo& b) { return adjacent(a.region, b.region); }));
    for (const RegionInfo& b : regions()) {
      CHECK(adjacent(a.region, b.region) == adjacent(b.region, a.region));
    }
  }
  for (const Seam seam : seams()) CHECK(adjacent(seam.b, seam.a));
}

TEST_CASE("groups") {
  CHECK(parse_group("body") == Group::body);
  CHECK_FALSE(parse_group("torso"));
  CHECK(in_group(Region::ears, Group::head));
  CHECK(in_group(Region::ears, Group::furnishings));
  CHECK_FALSE(in_group(Region::ruff, Group::body));
  CHECK(info(Group::body).members.size() == 6);
}

// Thin, folded or mobile skin: common practice, no source.
TEST_CASE("thin skin where the trade's rule names it") {
  for (const Region region : {Region::ears, Region::eyes, Region::throat, Region::belly,
                              Region::tuck_up, Region::sanitary, Region::hocks}) {
    CHECK(info(region).thin_skin);
  }
  CHECK_FALSE(info(Region::back).thin_skin);
}
