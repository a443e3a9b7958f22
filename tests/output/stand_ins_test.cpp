#include <catch2/catch.hpp>

#include "output/stand_ins.h"

using namespace furnish;

TEST_CASE("Latin signs and ligatures from right to left have one character to stand in for them") {
  // Private use (Unicode 15, 23.5), where no font has a letter of its own.
  CHECK(stand_in(U" ") == "\uF020");
  CHECK(stand_in(U"\u0644\u0627") == "\uF103");
  CHECK(stand_in(U"\u0645") == "\u0645");
  CHECK(stand_in(U"\u0644\u0644\u0647") == "\u0644\u0644\u0647");
}

TEST_CASE("A map to Unicode says what stand-ins stand for") {
  // A ligature's letters from left to right, as glyphs are: alef, then lam.
  CHECK(without_stand_ins("3 beginbfchar\n<0001> <f02e>\n<0002> <0645>\n<0003> <f103>\n"
                          "<0004> <f0a0>\nendbfchar") ==
        "3 beginbfchar\n<0001> <002e>\n<0002> <0645>\n<0003> <06270644>\n<0004> <0020>\nendbfchar");
  CHECK(without_stand_ins("<0001> <fb01>\n<0002> <f8ff>").empty());
}
