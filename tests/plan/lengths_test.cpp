#include "plan/lengths.h"

#include "plan/made.h"

using namespace furnish;
using namespace furnish::made;

// Against the lay a blade leaves its listed length, with it up to twice that, across between:
// common practice, no source. Fractions of an inch from the trade's table, 25.4 mm to the inch
// (NIST Handbook 44, App. C).
TEST_CASE("a blade leaves a range that follows from the lay") {
  const auto left = [](Lay lay) {
    return *length_left(part("back", blade("10"), lay), std::nullopt, Coat::smooth).left;
  };
  CHECK(left(Lay::against) == LengthRange{1588_um, 1588_um});
  CHECK(left(Lay::with) == LengthRange{1588_um, 3176_um});
  CHECK(left(Lay::across) == LengthRange{1588_um, 2382_um});
}

TEST_CASE("what the salon measured wins over the table") {
  std::optional<Kit> own = kit({"7F"}, {});
  own->measured[find_blade("7F")] = 3400_um;
  CHECK(length_left(part("back", blade("7F")), own, {}).left->low == 3400_um);
  CHECK(length_left(part("back", blade("5F")), own, {}).left->low == 6350_um);
  CHECK(length_left(part("back", blade("7F")), std::nullopt, {}).left->low == 3175_um);
}

TEST_CASE("combs, shears, strip and brush") {
  const auto row = [](const TrimPart& p, std::optional<Coat> coat = Coat::double_coat) {
    return length_left(p, std::nullopt, coat);
  };
  CHECK(row(part("hocks", comb(Length::inches(1, 2)))).left == LengthRange{12700_um, 12700_um});
  CHECK(row(part("hocks", comb(Length::inches(1, 2)))).basis == LengthBasis::comb);
  const PartLength stated = row(part("chest", shears(Shears::thinning), Lay::with, 30_mm));
  CHECK(stated.left == LengthRange{30_mm, 30_mm});
  CHECK(stated.basis == LengthBasis::stated);
  CHECK_FALSE(row(part("chest", shears(Shears::thinning))).left);
  CHECK(row(part("chest", shears(Shears::thinning))).basis == LengthBasis::unknown);
  CHECK_FALSE(row(part("back", HandStrip{Strip::hand})).left);
  // Natural length of a double coat on the ruff: 50 mm times 1.6 (common practice, no source).
  CHECK(row(part("ruff", Brush{})).left == LengthRange{80_mm, 80_mm});
  CHECK(row(part("ruff", Brush{})).basis == LengthBasis::natural);
  CHECK(row(part("ruff", Brush{}, Lay::with, 60_mm)).left == LengthRange{60_mm, 60_mm});
  CHECK_FALSE(row(part("ruff", Brush{}), std::nullopt).left);
}

TEST_CASE("a longer blade never leaves less") {
  for (const Lay lay : {Lay::with, Lay::across, Lay::against}) {
    LengthRange before;
    for (const Blade& one : blades()) {
      const LengthRange now =
          *length_left(part("back", Clip{&one}, lay), std::nullopt, Coat::drop).left;
      CHECK(now.low >= before.low);
      CHECK(now.high >= before.high);
      CHECK(now.low <= now.high);
      before = now;
    }
  }
}

TEST_CASE("find_length meets a side and the pair") {
  const std::vector<PartLength> rows{{at("hocks"), LengthBasis::stated, {}, {}},
                                     {at("left-foot"), LengthBasis::stated, {}, {}}};
  CHECK(find_length(rows, at("left hock")) == &rows[0]);
  CHECK(find_length(rows, at("right foot")) == nullptr);
}
