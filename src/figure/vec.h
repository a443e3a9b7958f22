#pragma once

#include <cmath>
#include <vector>

namespace furnish {

/// A point or direction of the figure: the withers of a dog of medium legs stand 100 above the
/// ground, x grows toward the tail, y up.
struct Vec {
  double x = 0, y = 0;
  friend constexpr bool operator==(Vec, Vec) = default;
  friend constexpr Vec operator+(Vec a, Vec b) { return {a.x + b.x, a.y + b.y}; }
  friend constexpr Vec operator-(Vec a, Vec b) { return {a.x - b.x, a.y - b.y}; }
  friend constexpr Vec operator*(Vec a, double k) { return {a.x * k, a.y * k}; }
  friend constexpr Vec operator*(double k, Vec a) { return a * k; }
};
constexpr double dot(Vec a, Vec b) {
  return a.x * b.x + a.y * b.y;
}
/// Positive if `b` lies to the left of `a`.
constexpr double cross(Vec a, Vec b) {
  return a.x * b.y - a.y * b.x;
}
inline double length(Vec a) {
  return std::sqrt(dot(a, a));
}
inline double distance(Vec a, Vec b) {
  return length(a - b);
}
/// Zero stays zero.
inline Vec unit(Vec a) {
  const double l = length(a);
  return l > 0 ? a * (1 / l) : Vec{};
}
constexpr Vec mix(Vec a, Vec b, double t) {
  return a * (1 - t) + b * t;
}
/// A quarter turn to the left: outward, where an outline runs with its inside on the right.
constexpr Vec left_of(Vec a) {
  return {-a.y, a.x};
}
/// Distance from `p` to the segment `a` `b`.
inline double distance_to_segment(Vec p, Vec a, Vec b) {
  const Vec ab = b - a;
  const double l2 = dot(ab, ab);
  const double t = l2 > 0 ? std::fmin(1, std::fmax(0, dot(p - a, ab) / l2)) : 0;
  return distance(p, a + ab * t);
}

/// Corners of a closed polygon, or points of an open line.
using Ring = std::vector<Vec>;
}  // namespace furnish
