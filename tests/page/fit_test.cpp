#include "page/fit.h"

#include <catch2/catch.hpp>
#include <numeric>
#include <random>

using namespace furnish;

namespace {
Length total(const std::vector<Length>& heights) {
  return std::accumulate(heights.begin(), heights.end(), Length{});
}
}  // namespace

TEST_CASE("fit_column keeps its promises on 20 000 made-up columns", "[page][fit]") {
  std::mt19937 random(20261124);
  const auto draw = [&](std::int64_t below) {
    return static_cast<std::int64_t>(random() % static_cast<std::uint64_t>(below));
  };
  int seen[3] = {};
  for (int round = 0; round < 20'000; ++round) {
    std::vector<Spring> springs(static_cast<std::size_t>(1 + draw(12)));
    Length wanted, least;
    int stretch = 0;
    for (Spring& spring : springs) {
      spring.least = Length::micrometres(draw(40'000));
      spring.wanted = spring.least + Length::micrometres(draw(3) == 0 ? 0 : draw(20'000));
      spring.stretch = static_cast<int>(draw(4));
      wanted += spring.wanted;
      least += spring.least;
      stretch += spring.stretch;
    }
    const Length room = Length::micrometres(draw(500'000));
    const Fit fit = fit_column(springs, room);
    ++seen[static_cast<int>(fit.status)];
    REQUIRE(fit.heights.size() == springs.size());
    for (std::size_t i = 0; i < springs.size(); ++i) REQUIRE(fit.heights[i] >= springs[i].least);
    switch (fit.status) {
      case Fit::Status::overflow:
        REQUIRE(least > room);
        REQUIRE(total(fit.heights) == least);
        break;
      case Fit::Status::squeezed:
        REQUIRE(wanted > room);
        REQUIRE(total(fit.heights) == room);
        for (std::size_t i = 0; i < springs.size(); ++i) {
          REQUIRE(fit.heights[i] <= springs[i].wanted);
        }
        break;
      case Fit::Status::roomy:
        REQUIRE(wanted <= room);
        REQUIRE(total(fit.heights) == (stretch > 0 ? room : wanted));
        for (std::size_t i = 0; i < springs.size(); ++i) {
          const Length more = fit.heights[i] - springs[i].wanted;
          REQUIRE(more >= Length{});
          if (springs[i].stretch == 0) REQUIRE(more == Length{});
          if (stretch == 0) continue;
          // Even to the micrometre that a running total may be rounded by.
          const double share =
              static_cast<double>((room - wanted).um()) * springs[i].stretch / stretch;
          REQUIRE(std::abs(static_cast<double>(more.um()) - share) <= 1);
        }
        break;
    }
  }
  for (const int count : seen) CHECK(count > 500);
}

TEST_CASE("an empty column and a column without stretch", "[page][fit]") {
  CHECK(fit_column({}, Length::mm(10)).heights.empty());
  const Spring rigid[] = {{Length::mm(3), Length::mm(3), 0}, {Length::mm(4), Length::mm(4), 0}};
  const Fit fit = fit_column(rigid, Length::mm(10));
  CHECK(fit.status == Fit::Status::roomy);
  CHECK(fit.heights == std::vector<Length>{Length::mm(3), Length::mm(4)});
}
