#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <set>

#include "figure/callouts.h"
#include "figure/generated.h"
#include "figure/skeleton.h"
#include "figure/spline.h"

namespace furnish {
namespace {
Ring outline_of(const SkinPart& part) {
  std::vector<Knot> knots;
  for (const Landmark& landmark : part) knots.push_back({landmark.at, landmark.corner});
  return sampled(spline(knots, SplineEnds::closed), 1.5, SplineEnds::closed).points;
}

std::size_t crossings(const Ring& ring) {
  std::size_t count = 0;
  const std::size_t n = ring.size();
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = i + 2; j < n; ++j) {
      if (i == 0 && j + 1 == n) continue;
      if (segments_cross(ring[i], ring[i + 1], ring[j], ring[(j + 1) % n])) ++count;
    }
  }
  return count;
}

/// Above the ground; the back's outline runs a little over them.
double withers(const Build& build) {
  constexpr Vec outline_over_withers{4, 103};
  constexpr double skin = 3;
  return built(outline_over_withers, build).y - skin;
}

double highest(const SkinPart& part) {
  return std::ranges::max_element(part, {}, [](const Landmark& l) { return l.at.y; })->at.y;
}
}  // namespace

TEST_CASE("every build has closed outlines that do not cross themselves and run clockwise",
          "[figure][outline]") {
  for (const Build& build : all_builds()) {
    const Skeleton bones = skeleton(build);
    for (const SkinPart* part :
         {&bones.body, &bones.front_leg, &bones.rear_leg, &bones.ear.outline}) {
      const Ring ring = outline_of(*part);
      CHECK(crossings(ring) == 0);
      double twice = 0;
      for (std::size_t i = 0; i < ring.size(); ++i) {
        twice += cross(ring[i], ring[(i + 1) % ring.size()]);
      }
      CHECK(twice < 0);
    }
  }
}

TEST_CASE("curves of a closed spline join end to end", "[figure][outline]") {
  const Skeleton bones = skeleton({});
  std::vector<Knot> knots;
  for (const Landmark& landmark : bones.body) knots.push_back({landmark.at, landmark.corner});
  const std::vector<Bezier> curves = spline(knots, SplineEnds::closed);
  REQUIRE(curves.size() == knots.size());
  for (std::size_t i = 0; i < curves.size(); ++i) {
    CHECK(curves[i].to == curves[(i + 1) % curves.size()].from);
    // The tangent's length is bound by the segment's own chord, as FIGURE's rule says.
    CHECK(distance(curves[i].from, curves[i].control1) <=
          distance(curves[i].from, curves[i].to) / 3 + 1e-9);
  }
}

TEST_CASE("all regions that show from the side have a stretch of outline", "[figure][outline]") {
  const Skeleton bones = skeleton({});
  std::set<Region> seen{Region::tail};  // has a spine of its own
  for (const SkinPart* part :
       {&bones.body, &bones.front_leg, &bones.rear_leg, &bones.ear.outline}) {
    for (const Landmark& landmark : *part) {
      if (landmark.skin != Skin::covered) seen.insert(landmark.region);
    }
  }
  // Inside the outline from the side: corners of the eyes, sides, and the sanitary area.
  for (const RegionInfo& region : regions()) {
    const bool inside = region.region == Region::eyes || region.region == Region::sides ||
                        region.region == Region::sanitary;
    INFO(region.name);
    CHECK(seen.contains(region.region) == !inside);
  }
}

TEST_CASE("the medium dog has common proportions", "[figure][outline]") {
  // Common proportions in the breed standards of moderate dogs, from memory: elbow at half the
  // height, hock at a quarter to three tenths, head about 40 %, body a little longer than high.
  const Skeleton bones = skeleton({});
  const auto leg_at = [](const SkinPart& part, Region region, bool rightmost) {
    Vec best{rightmost ? -1e9 : 1e9, 0};
    for (const Landmark& l : part) {
      if (l.region == region && (rightmost ? l.at.x > best.x : l.at.x < best.x)) best = l.at;
    }
    return best;
  };
  CHECK(withers({}) == Approx(100).margin(1));
  const Vec hock = leg_at(bones.rear_leg, Region::hocks, true);
  CHECK(hock.y == Approx(27).margin(4));
  const Vec elbow = leg_at(bones.front_leg, Region::fringe, true);
  CHECK(elbow.y == Approx(50).margin(4));
  const Vec nose = leg_at(bones.body, Region::muzzle, false);
  const Vec occiput{-25, 130};
  CHECK(distance(nose, occiput) == Approx(46).margin(6));
  const Vec shoulder = leg_at(bones.body, Region::ruff, false);
  const Vec buttock = leg_at(bones.rear_leg, Region::breeches, true);
  CHECK((buttock.x - shoulder.x) / withers({}) == Approx(1.12).margin(0.08));
}

TEST_CASE("build changes the landmarks it is about", "[figure][outline]") {
  Build build;
  const Skeleton medium = skeleton(build);
  build.legs = Legs::short_legs;
  CHECK(withers(build) < withers({}) - 15);
  build.legs = Legs::long_legs;
  CHECK(withers(build) > withers({}) + 5);
  build = {};
  build.body = BodyLength::long_body;
  const auto back_end = [](const Skeleton& s) {
    return std::ranges::max_element(s.rear_leg, {}, [](const Landmark& l) { return l.at.x; })->at.x;
  };
  CHECK(back_end(skeleton(build)) > back_end(medium) + 15);
  CHECK(highest(skeleton(build).body) == Approx(highest(medium.body)));
  build = {};
  std::map<NoseLength, double> nose_tip;
  for (const NoseLength nose :
       {NoseLength::short_nose, NoseLength::medium, NoseLength::long_nose}) {
    build.nose = nose;
    const Skeleton bones = skeleton(build);
    nose_tip[nose] =
        std::ranges::min_element(bones.body, {}, [](const Landmark& l) { return l.at.x; })->at.x;
  }
  CHECK(nose_tip[NoseLength::short_nose] > nose_tip[NoseLength::medium] + 6);
  CHECK(nose_tip[NoseLength::long_nose] < nose_tip[NoseLength::medium] - 5);
}
}  // namespace furnish
