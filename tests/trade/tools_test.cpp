#include "trade/tools.h"

#include <array>
#include <catch2/catch.hpp>
#include <set>

using namespace furnish;

// Fractions of an inch by blade number: common practice, no source. Millimetres computed from them
// at 25.4 mm to the inch (NIST Handbook 44, App. C).
TEST_CASE("blades leave their fraction of an inch") {
  struct Row {
    const char* name;
    double mm;
    Teeth teeth;
  };
  constexpr std::array rows{Row{"50", 0.203, Teeth::close},  Row{"40", 0.254, Teeth::close},
                            Row{"30", 0.508, Teeth::close},  Row{"15", 1.191, Teeth::close},
                            Row{"10", 1.588, Teeth::close},  Row{"9", 1.984, Teeth::close},
                            Row{"8½", 2.778, Teeth::close},  Row{"7", 3.175, Teeth::skip},
                            Row{"7F", 3.175, Teeth::finish}, Row{"6F", 4.763, Teeth::finish},
                            Row{"5", 6.35, Teeth::skip},     Row{"5F", 6.35, Teeth::finish},
                            Row{"4", 9.525, Teeth::skip},    Row{"4F", 9.525, Teeth::finish},
                            Row{"3¾", 12.7, Teeth::skip},    Row{"3", 12.7, Teeth::skip},
                            Row{"3F", 12.7, Teeth::finish}};
  REQUIRE(blades().size() == rows.size());
  for (std::size_t i = 0; i < rows.size(); ++i) {
    INFO(rows[i].name);
    CHECK(blades()[i].name == rows[i].name);
    CHECK(blades()[i].length().in_mm() == Approx(rows[i].mm).margin(0.0006));
    CHECK(blades()[i].teeth == rows[i].teeth);
  }
}

TEST_CASE("a blade under its several names") {
  for (const char* const name : {"8½", "8 1/2", "8-1/2", "8.5", "#8½", " 8.5 "}) {
    INFO(name);
    REQUIRE(find_blade(name) != nullptr);
    CHECK(find_blade(name)->name == "8½");
  }
  CHECK(find_blade("7f") == find_blade("#7F"));
  CHECK(find_blade("3.75") == find_blade("3¾"));
  for (const char* const no : {"", "#", "11", "7FF", "5/8", "-10", "F"}) {
    CHECK(find_blade(no) == nullptr);
  }
}

TEST_CASE("finish twins, close blades and bases") {
  CHECK(finish_twin(*find_blade("7")) == find_blade("7F"));
  CHECK(finish_twin(*find_blade("3¾")) == find_blade("3F"));
  CHECK(finish_twin(*find_blade("7F")) == nullptr);
  CHECK(finish_twin(*find_blade("10")) == nullptr);
  for (const Blade& one : blades()) {
    CHECK(skin_close(one) == (one.name == "30" || one.name == "40" || one.name == "50"));
    CHECK(guard_comb_base(one) == (one.name == "30" || one.name == "40"));
    if (one.teeth == Teeth::skip) CHECK(finish_twin(one) != nullptr);
  }
}

TEST_CASE("guard combs by length") {
  constexpr std::array mm{3.175, 6.35, 9.525, 12.7, 15.875, 19.05, 22.225, 25.4, 31.75, 38.1};
  REQUIRE(guard_combs().size() == mm.size());
  for (std::size_t i = 0; i < mm.size(); ++i) CHECK(guard_combs()[i].in_mm() == Approx(mm[i]));
  // Half an inch and 13 mm are one comb; no two of the table are.
  CHECK(13_mm - guard_combs()[3] <= comb_tolerance);
  for (std::size_t i = 1; i < mm.size(); ++i) {
    CHECK(guard_combs()[i] - guard_combs()[i - 1] > comb_tolerance);
  }
}

TEST_CASE("shears and directions in the trade's words") {
  CHECK(parse_shears("thinners") == Shears::thinning);
  CHECK(parse_shears("chunking") == Shears::blending);
  CHECK(parse_shears(" Curved ") == Shears::curved);
  CHECK_FALSE(parse_shears("sharp"));
  for (const std::string_view word : shears_words()) CHECK(to_text(*parse_shears(word)) == word);
  CHECK(parse_lay("against") == Lay::against);
  CHECK_FALSE(parse_lay("sideways"));
}

// With the lay up to twice the nominal length: common practice, no source.
TEST_CASE("what a cut leaves") {
  CHECK(left_by_blade(10_mm, Lay::against) == LengthRange{10_mm, 10_mm});
  CHECK(left_by_blade(10_mm, Lay::across) == LengthRange{10_mm, 15_mm});
  CHECK(left_by_blade(10_mm, Lay::with) == LengthRange{10_mm, 20_mm});
  // A comb with the lay: to one quarter more, not double.
  CHECK(left_by_comb(16_mm, Lay::against) == LengthRange{16_mm, 16_mm});
  CHECK(left_by_comb(16_mm, Lay::across) == LengthRange{16_mm, 18_mm});
  CHECK(left_by_comb(16_mm, Lay::with) == LengthRange{16_mm, 20_mm});
}

TEST_CASE("tools in words") {
  CHECK(to_text(Tool(Clip{find_blade("10")})) == "#10");
  CHECK(to_text(Tool(Brush{})) == "brush");
  CHECK(to_text(Tool(Scissor{Shears::thinning})) == "thinning shears");
  CHECK(to_text(Tool(HandStrip{Strip::hand})) == "strip by hand");
  CHECK(to_text(Tool(CombOver{Length::inches(1, 2), find_blade("30")})) ==
        "½\u202Fin comb over #30");
}
