#include "trade/pose.h"

#include <catch2/catch.hpp>

using namespace furnish;

TEST_CASE("free words say how a dog may be held") {
  for (const char* words : {"let him lie", "lying down, on the cushion", "on her side",
                            "Lies on the mat.", "Wait until she is calm, then lie her down"}) {
    INFO(words);
    CHECK(read_pose(words).lies);
    CHECK_FALSE(read_pose(words).feet_low);
  }
  for (const char* words : {"Lift no rear leg.", "never lift a leg above its own joint",
                            "foot held low", "don’t raise his front legs", "legs not lifted"}) {
    INFO(words);
    CHECK(read_pose(words).feet_low);
    CHECK_FALSE(read_pose(words).lies);
  }
  for (const char* words :
       {"", "never let him lie on the table", "one arm under each end",
        "lift with one arm under the legs", "two hands, no grip", "Snaps when a rear foot is held",
        "low air", "never on the head", "stands on his good side of the table"}) {
    INFO(words);
    CHECK_FALSE(read_pose(words).lies);
    CHECK_FALSE(read_pose(words).feet_low);
  }
}
