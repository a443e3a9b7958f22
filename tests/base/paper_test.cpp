#include "base/paper.h"

#include <catch2/catch.hpp>

using namespace furnish;

TEST_CASE("paper sizes in points", "[paper]") {
  // ISO 216 sizes at 72/25.4 points a millimetre; inches at 72 (TRADE.md, section 5).
  struct Expected {
    std::string_view name;
    double width, height;
  };
  const Expected expected[] = {{"A4", 595.2756, 841.8898}, {"A5", 419.5276, 595.2756},
                               {"A6", 297.6378, 419.5276}, {"letter", 612, 792},
                               {"half letter", 396, 612},  {"5x8 in", 360, 576},
                               {"4x6 in", 288, 432},       {"A3", 841.8898, 1190.5512}};
  REQUIRE(papers.size() == std::size(expected));
  for (const Expected& each : expected) {
    INFO(each.name);
    const auto paper = parse_paper(each.name);
    REQUIRE(paper);
    CHECK(paper->size.width.in_points() == Approx(each.width).margin(0.0001));
    CHECK(paper->size.height.in_points() == Approx(each.height).margin(0.0001));
  }
}

TEST_CASE("papers by the names people write", "[paper]") {
  CHECK(parse_paper("a5")->name == "A5");
  CHECK(parse_paper("Half-Letter")->name == "half letter");
  CHECK(parse_paper("5 \u00D7 8 in")->name == "5x8 in");
  CHECK_FALSE(parse_paper("A9"));
  CHECK_FALSE(parse_paper(""));
  CHECK(paper_names().front() == "A4");
}
