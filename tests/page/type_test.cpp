#include "page/type.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "support.h"

using namespace furnish;

TEST_CASE("capital heights at a distance", "[page][type]") {
  // h = 2·D·tan(θ/2), NUREG-0700 rev. 2, 1.3.1-4; millimetres from the table in TRADE.md,
  // section 5.
  struct Line {
    int distance;
    double at16, at20, at22;
  };
  for (const Line& line : {Line{400, 1.862, 2.327, 2.560}, Line{500, 2.327, 2.909, 3.200},
                           Line{600, 2.793, 3.491, 3.840}, Line{1000, 4.654, 5.818, 6.400},
                           Line{1500, 6.981, 8.727, 9.599}, Line{2000, 9.308, 11.636, 12.799}}) {
    const Length distance = Length::mm(line.distance);
    INFO(line.distance);
    // The table is rounded to a micrometre, as a Length is; two roundings may differ by one.
    CHECK(std::abs(capital_height(distance, 16).in_mm() - line.at16) < 0.0011);
    CHECK(std::abs(capital_height(distance, 20).in_mm() - line.at20) < 0.0011);
    CHECK(std::abs(capital_height(distance, 22).in_mm() - line.at22) < 0.0011);
    CHECK(arc_minutes(distance, capital_height(distance, 20)) == Approx(20).epsilon(0.001));
  }
}

TEST_CASE("point sizes from capital heights", "[page][type]") {
  // TRADE.md, section 5: capitals of 0.70 em, 16′ at 400 mm is 7.54 pt, 20′ at 1 m 23.56 pt; a size
  // is the next quarter point.
  const std::vector<TypeRole> near{{Role::body, Length::mm(400), 16}},
      far{{Role::body, Length::mm(1000), 20}};
  CHECK(TypeScale(near, 0.70, 0, 12)[Role::body].points() == 7.75);
  CHECK(TypeScale(far, 0.70, 12, 12)[Role::body].points() == 23.75);
  CHECK(TypeSize::at_least(9.0).points() == 9.0);
  CHECK(TypeSize::at_least(9.01).points() == 9.25);
}

TEST_CASE("no role is ever under its minimum or over its most", "[page][type]") {
  const auto roles = test::reading_roles();
  for (const double capital : {0.60, 0.652, 0.66, 0.70, 0.73}) {
    TypeScale before(roles, capital, 0, 12);
    for (int step = 0; step <= 12; ++step) {
      const TypeScale scale(roles, capital, step, 12);
      for (const TypeRole& role : roles) {
        const double points = scale[role.role].points(),
                     minutes = arc_minutes(role.distance, Length::points(points * capital));
        INFO(name(role.role) << " at step " << step);
        CHECK(points * 4 == std::floor(points * 4));
        CHECK(minutes >= 16 - 0.002);  // what a micrometre is at these distances
        // Over its most by less than the quarter point it is rounded up by.
        CHECK(arc_minutes(role.distance, Length::points((points - 0.25) * capital)) <
              role.most_arc_minutes);
        CHECK(scale[role.role] >= before[role.role]);
      }
      before = scale;
    }
  }
}

TEST_CASE("a floor in points and roles that were not given", "[page][type]") {
  const std::vector<TypeRole> roles{{Role::body, Length::mm(400), 22, 12.0}};
  const TypeScale scale(roles, 0.66, 0, 12);
  CHECK(scale[Role::body].points() == 12.0);
  CHECK(scale[Role::title] == scale[Role::body]);
}
