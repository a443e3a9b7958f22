#include "trade/coat.h"

#include <catch2/catch.hpp>

#include "trade/health.h"

using namespace furnish;

// Intervals, mat-prone lengths and brushing: common practice, no source.
TEST_CASE("coats, their intervals and where they mat") {
  const auto weeks = [](Coat c) { return std::pair(info(c).weeks_low, info(c).weeks_high); };
  CHECK(weeks(Coat::double_coat) == std::pair(6, 10));
  CHECK(weeks(Coat::curly) == std::pair(4, 6));
  CHECK(weeks(Coat::drop) == std::pair(4, 8));
  CHECK(weeks(Coat::silky) == std::pair(4, 8));
  CHECK(weeks(Coat::wire) == std::pair(8, 12));
  CHECK(weeks(Coat::smooth) == std::pair(8, 12));
  CHECK(weeks(Coat::hairless) == std::pair(4, 4));
  CHECK(info(Coat::curly).mats == 25_mm);
  CHECK(info(Coat::drop).mats == 50_mm);
  CHECK(info(Coat::silky).mats == 50_mm);
  CHECK(info(Coat::wire).mats == 40_mm);
  CHECK_FALSE(info(Coat::double_coat).mats);
  CHECK_FALSE(info(Coat::smooth).mats);
}

TEST_CASE("published growth lies in the coats' ranges") {
  // Schuldenfrei, Pieper, Veterinary Dermatology 2020: 0.065 mm a day over all hairs of 13 dogs.
  CHECK(info(Coat::double_coat).growth.low <= 65);
  CHECK(info(Coat::smooth).growth.low <= 65);
  // Al-Bagdadi 1977, beagle, from memory: 0.34 to 0.40; half an inch a month (common practice):
  // 0.417.
  for (const Coat coat : {Coat::curly, Coat::drop, Coat::silky}) {
    CHECK(info(coat).growth.low == 250);
    CHECK(info(coat).growth.high == 450);
    CHECK(info(coat).keeps_growing);
    CHECK(info(coat).growth.high >= 417);
  }
  CHECK(info(Coat::wire).growth.low == 150);
  CHECK(info(Coat::wire).growth.high == 350);
  CHECK(info(Coat::double_coat).growth.high == 350);
  CHECK_FALSE(info(Coat::double_coat).keeps_growing);
  CHECK_FALSE(info(Coat::smooth).keeps_growing);
}

// Diaz et al., Veterinary Dermatology 2004;15:25-30: a Labrador's thigh is full again after 13.6 to
// 15.4 weeks. A double coat's thigh at the fast end of the range gets to its natural length no
// later than that, at the slow end not before.
TEST_CASE("a Labrador's regrowth is inside the range of a double coat") {
  const double natural_um =
      static_cast<double>(natural_length(Coat::double_coat, Region::rear_legs).um());
  CHECK(natural_um / info(Coat::double_coat).growth.high / 7 <= 16.5);
  CHECK(natural_um / info(Coat::double_coat).growth.low / 7 >= 15.4);
}

TEST_CASE("keys read back, and natural lengths are whole millimetres") {
  for (const CoatInfo& row : coats()) {
    CHECK(parse_coat(row.key) == row.coat);
    for (const RegionInfo& region : regions()) {
      CHECK(natural_length(row.coat, region.region).um() % 1000 == 0);
    }
  }
  CHECK(natural_length(Coat::double_coat, Region::ruff) == 80_mm);
  // "Beard and eyebrows are left far longer than the jacket: 60 mm and more": common practice, no
  // source.
  CHECK(natural_length(Coat::wire, Region::muzzle) >= 60_mm);
  CHECK(natural_length(Coat::wire, Region::back) == 60_mm);
  CHECK_FALSE(parse_coat("fluffy"));
}

TEST_CASE("limits of age, weight and time") {
  CHECK(senior_years == 10);
  CHECK(senior_years_giant == 7);
  CHECK(giant == Mass::kg(40));
  CHECK(puppy_months == 6);
  CHECK(weight_loss_percent == 10);
  CHECK(rabies_wait == std::chrono::days(28));         // CDC
  CHECK(medicated_dwell == std::chrono::minutes(10));  // MSD Veterinary Manual, owner's table
  CHECK(double_coat_shortest_mm == 25);
  for (const std::string_view word : condition_words()) {
    CHECK(to_text(*parse_condition(word)) == word);
  }
  CHECK_FALSE(parse_condition("seizure-ish"));
}
