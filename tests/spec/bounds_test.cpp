#include <catch2/catch.hpp>

#include "spec/bounds.h"

namespace furnish::test {
namespace {
using namespace std::chrono_literals;
}

TEST_CASE("the words of a bound are made from its numbers", "[bounds]") {
  CHECK(to_text(bounds::weight) == "more than 0 kg and at most 150 kg");
  CHECK(to_text(bounds::dwell) == "more than 0 min and under 1 h");
  CHECK(to_text(bounds::visit_every) == "at least 1 week and at most 104 weeks");
  CHECK(to_text(bounds::vaccination_valid) == "at least 1 day and at most 20 years");
  CHECK(to_text(bounds::coat) == "at least 0 mm and at most 500 mm");
  CHECK(to_text(bounds::mix_per_m2) == "at least 50 ml and at most 20 l");
  CHECK(to_text(bounds::blend_ratio) == "at least 1.05 and at most 10");
  CHECK(to_text(bounds::day) == "from 1990-01-01 to 2199-12-31");
  CHECK(to_text(Range<std::chrono::seconds>{90s, 30min}) == "at least 90 s and at most 30 min");
}

TEST_CASE("an open end does not belong to its range", "[bounds]") {
  CHECK_FALSE(bounds::weight.holds(Mass()));
  CHECK(bounds::weight.holds(Mass::micrograms(1)));
  CHECK(bounds::weight.holds(Mass::kg(150)));
  CHECK_FALSE(bounds::weight.holds(Mass::micrograms(150'000'000'001)));
  CHECK(bounds::dwell.holds(59min + 59s));
  CHECK_FALSE(bounds::dwell.holds(1h));
  CHECK(bounds::coat.holds(0_mm));
}
}  // namespace furnish::test
