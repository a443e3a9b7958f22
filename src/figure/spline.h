#pragma once

#include <cstdint>
#include <vector>

#include "figure/vec.h"

namespace furnish {

/// A point a spline runs through. At a corner it has no common tangent.
struct Knot {
  Vec at;
  bool corner = false;
};

struct Bezier {
  Vec from, control1, control2, to;
  Vec at(double t) const;
};

enum class SplineEnds : std::uint8_t { closed, open };

/// The smooth line through all knots: tangents run along the chord of the two neighbours, their
/// length limited by the segment's own chord, so that close knots do not overshoot.
std::vector<Bezier> spline(const std::vector<Knot>&, SplineEnds);

/// Points of the curves, about `step` apart, each curve's start included; for an open line the last
/// end too. `curve` says which curve each point is on.
struct Sampled {
  Ring points;
  std::vector<std::size_t> curve;
};
Sampled sampled(const std::vector<Bezier>&, double step, SplineEnds);

/// The ring with fewer points: none of those left out was farther than `tolerance` from the line.
Ring simplified(const Ring&, double tolerance);
/// The same for an open line; both ends stay.
Ring simplified_line(const Ring&, double tolerance);
}  // namespace furnish
