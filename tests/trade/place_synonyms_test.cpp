#include <catch2/catch.hpp>

#include <map>
#include <string>

#include "trade/place_synonyms.h"

namespace furnish::test {

TEST_CASE("every region has five words of the trade, and each word means one region",
          "[synonyms]") {
  std::map<std::string, Region> meant;
  for (const RegionInfo& row : regions()) {
    CHECK(synonyms(row.region).size() >= 5);
    for (const std::string_view word : synonyms(row.region)) {
      INFO(word);
      CHECK(meant.try_emplace(std::string(word), row.region).second);
      CHECK(parse_synonym(word) == Place{row.region, Side::both});
      // What files call a place comes first.
      CHECK_FALSE(parse_place(word));
      CHECK_FALSE(parse_group(word));
      CHECK(several_meant(word).empty());
    }
  }
}

TEST_CASE("trade words are taken with a side, one or many, and in any spelling", "[synonyms]") {
  CHECK(parse_synonym("Hind legs") == Place{Region::rear_legs, Side::both});
  CHECK(parse_synonym("left hind leg") == Place{Region::rear_legs, Side::left});
  CHECK(parse_synonym("right-paw") == Place{Region::feet, Side::right});
  CHECK(parse_synonym("top of head") == Place{Region::crown, Side::both});
  CHECK(parse_synonym("bum") == Place{Region::rump, Side::both});
  // The rump has no sides to trim apart, but something may be found on one.
  CHECK_FALSE(parse_synonym("left bum"));
  CHECK(parse_synonym("left bum", AnySide::yes) == Place{Region::rump, Side::left});
  CHECK(several_meant("face").size() == 2);
  for (const char* word : {"", "s", "leg", "front", "wing", "left", "left face"}) {
    INFO(word);
    CHECK_FALSE(parse_synonym(word));
  }
}
}  // namespace furnish::test
