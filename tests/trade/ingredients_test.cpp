#include "trade/ingredients.h"

#include <catch2/catch.hpp>

using namespace furnish;

TEST_CASE("ingredients meet by the beginnings of words, either way") {
  for (const auto& [unwanted, contained] : {std::pair{"oat", "colloidal oatmeal"},
                                            {"oatmeal", "oat"},
                                            {"oatmeal", "oats"},
                                            {"Oats", "oat"},
                                            {"Tea tree", "tea-tree oil"},
                                            {"tea tree oil", "tea tree"},
                                            {"Kokosöl", "KOKOSOL"},
                                            {"rosemary", "rose"}}) {
    INFO(unwanted << " / " << contained);
    CHECK(same_ingredient(unwanted, contained));
  }
  for (const auto& [unwanted, contained] : {std::pair{"oat", "goat milk"},
                                            {"sea salt", "sea buckthorn"},
                                            {"lavender", "aloe"},
                                            {"wheat", "w"},
                                            {"", "oat"},
                                            {"oat", ""}}) {
    INFO(unwanted << " / " << contained);
    CHECK_FALSE(same_ingredient(unwanted, contained));
  }
}

TEST_CASE("a product's name has other words, by which nothing meets") {
  CHECK(names_ingredient("oat shampoo", "oatmeal"));
  CHECK_FALSE(names_ingredient("spray", "lavender spray"));
  CHECK(same_ingredient("lavender spray", "spray"));
}

TEST_CASE("what a text says that it is allergic to, as far as its sentence lists it") {
  using Strings = std::vector<std::string>;
  CHECK(told_allergies("Allergic to oats.") == Strings{"oats"});
  CHECK(told_allergies("Has an allergy to lavender and tea-tree oil; hives.") ==
        Strings{"lavender", "tea tree oil"});
  CHECK(told_allergies("Allergies to wheat, oats or anything with coconut") ==
        Strings{"wheat", "oats", "coconut"});
  CHECK(told_allergies("Allergic to oats, use the coconut shampoo") == Strings{"oats"});
  CHECK(told_allergies("allergic to oats but fine with lavender") == Strings{"oats"});
  CHECK(told_allergies("Allergic to oats. Lavender is good.") == Strings{"oats"});
  CHECK(told_allergies("Not allergic to oats.").empty());
  CHECK(told_allergies("Lavender gives her hives.").empty());
  CHECK(told_allergies("").empty());
}
