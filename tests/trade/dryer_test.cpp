#include "trade/dryer.h"

#include <catch2/catch.hpp>

using namespace furnish;

TEST_CASE("the kind of dryer") {
  CHECK(read_dryer("force dryer").force);
  CHECK(read_dryer("high velocity, low setting").force);
  CHECK(read_dryer("Forced air on the body").force);
  CHECK(read_dryer("cage dryer, no heat").cage);
  CHECK_FALSE(read_dryer("cage dryer, no heat").heated);
  CHECK(read_dryer("kennel dryer on warm").cage);
  CHECK(read_dryer("kennel dryer on warm").heated);
  CHECK_FALSE(read_dryer("towel in the kennel").cage);
  CHECK(read_dryer("heated stand dryer").heated);
  CHECK_FALSE(read_dryer("warm towel, then air").heated);
  CHECK_FALSE(read_dryer("in a warm room").heated);
  const DryerWords none = read_dryer("");
  CHECK_FALSE(none.force);
  CHECK_FALSE(none.heated);
  CHECK_FALSE(none.cage);
}

TEST_CASE("a dryer that is ruled out") {
  CHECK(read_dryer("never force dryer").no_force);
  CHECK(read_dryer("no force dryer with his bad ears").no_force);
  CHECK_FALSE(read_dryer("no force dryer on the head").no_force);
  CHECK(read_dryer("no force dryer on the head").head_spared);
  CHECK_FALSE(read_dryer("never force dryer").force);
  CHECK_FALSE(read_dryer("no heated dryer").heated);
  CHECK(read_dryer("no heated dryer").no_heated);
  CHECK_FALSE(read_dryer("towel, without a cage dryer").cage);
  CHECK_FALSE(read_dryer("no force or cage dryer").cage);
  CHECK_FALSE(read_dryer("cage dryer: never").cage);
  CHECK_FALSE(read_dryer("force dryer not used").force);
  const DryerWords mixed = read_dryer("no cage dryer, force dryer on low");
  CHECK(mixed.force);
  CHECK_FALSE(mixed.cage);
}

TEST_CASE("head and ears that are spared") {
  CHECK_FALSE(read_dryer("force dryer, not on the head").force_on_head());
  CHECK_FALSE(read_dryer("force dryer, not on the head").force_on_ears());
  CHECK_FALSE(read_dryer("force dryer but never the face").force_on_head());
  CHECK_FALSE(read_dryer("force dryer, head by hand").force_on_head());
  CHECK_FALSE(read_dryer("force dryer away from the head").force_on_head());
  CHECK_FALSE(read_dryer("force dryer on the body only").force_on_head());
  CHECK_FALSE(read_dryer("force dryer, towel for head and ears").force_on_head());
  CHECK(read_dryer("force dryer, cover the ears").force_on_head());
  CHECK_FALSE(read_dryer("force dryer, cover the ears").force_on_ears());
  CHECK(read_dryer("force dryer on head and body").force_on_head());
  CHECK(read_dryer("force dryer").force_on_head());
  CHECK_FALSE(read_dryer("towel").force_on_head());
}

TEST_CASE("two texts together") {
  const DryerWords both =
      combined(read_dryer("force dryer, not on the head"), read_dryer("towel, then force dryer"));
  CHECK(both.force);
  CHECK_FALSE(both.force_on_head());
  CHECK(combined(read_dryer("never force dryer"), read_dryer("force dryer")).no_force);
}

TEST_CASE("something gentler only, or no dryer at all") {
  for (const char* words : {"quiet air only", "low air only", "Hand dry only"}) {
    INFO(words);
    CHECK(read_dryer(words).no_force);
    CHECK_FALSE(read_dryer(words).no_cage);
  }
  for (const char* words : {"towel only", "no dryer", "never a dryer", "no drying, towels"}) {
    INFO(words);
    CHECK(read_dryer(words).no_force);
    CHECK(read_dryer(words).no_heated);
    CHECK(read_dryer(words).no_cage);
  }
  for (const char* words :
       {"quiet air", "towel only on the head", "force dryer on the body only",
        "no dryer on the face", "never alone under the dryer", "towel, stand dryer on low"}) {
    INFO(words);
    CHECK_FALSE(read_dryer(words).no_force);
  }
}
