#include "trade/skin.h"

#include <catch2/catch.hpp>

using namespace furnish;

TEST_CASE("no tool goes over a growth, broken or sore skin") {
  for (const char* words :
       {"lump, pea-sized", "Warts", "hot spot, palm-sized, weeping", "scabs",
        "still sore, no longer warm", "hives, fading", "stitches, dry", "mass", "nodule, firm",
        "bump", "skin tag", "burn from clipper", "pus", "torn ear", "cracked pad", "red skin",
        "mats in the groin, skin red and weeping"}) {
    INFO(words);
    CHECK(keeps_tools_off(words));
  }
  for (const char* words :
       {"no lump", "drags the toes", "flea dirt", "brown and greasy", "cloudy, as before",
        "mat all round", "massaged", "pushes back", "price tag", "eyes red", ""}) {
    INFO(words);
    CHECK_FALSE(keeps_tools_off(words));
  }
}
