#include "figure/spline.h"

#include <algorithm>

namespace furnish {

Vec Bezier::at(double t) const {
  const Vec a = mix(from, control1, t), b = mix(control1, control2, t), c = mix(control2, to, t);
  return mix(mix(a, b, t), mix(b, c, t), t);
}

std::vector<Bezier> spline(const std::vector<Knot>& knots, SplineEnds ends) {
  const std::size_t n = knots.size();
  if (n < 2) return {};
  const auto tangent = [&](std::size_t i) {
    const bool first = ends == SplineEnds::open && i == 0,
               last = ends == SplineEnds::open && i + 1 == n;
    if (knots[i].corner || first || last) return Vec{};
    return unit(knots[(i + 1) % n].at - knots[(i + n - 1) % n].at);
  };
  std::vector<Bezier> out;
  const std::size_t count = ends == SplineEnds::closed ? n : n - 1;
  for (std::size_t i = 0; i < count; ++i) {
    const Vec a = knots[i].at, b = knots[(i + 1) % n].at;
    const double reach = distance(a, b) / 3;
    Vec out_of = tangent(i), into = tangent((i + 1) % n);
    // Where one end is free, the curve leaves it toward the other end's control.
    if (out_of == Vec{} && !(into == Vec{})) out_of = unit(b - into * reach - a);
    if (into == Vec{} && !(out_of == Vec{})) into = unit(b - (a + out_of * reach));
    if (out_of == Vec{}) out_of = into = unit(b - a);
    out.push_back({a, a + out_of * reach, b - into * reach, b});
  }
  return out;
}

Sampled sampled(const std::vector<Bezier>& curves, double step, SplineEnds ends) {
  Sampled out;
  for (std::size_t i = 0; i < curves.size(); ++i) {
    const double chord = distance(curves[i].from, curves[i].to);
    const int pieces = std::max(1, static_cast<int>(std::ceil(chord / step)));
    for (int k = 0; k < pieces; ++k) {
      out.points.push_back(curves[i].at(static_cast<double>(k) / pieces));
      out.curve.push_back(i);
    }
  }
  if (ends == SplineEnds::open && !curves.empty()) {
    out.points.push_back(curves.back().to);
    out.curve.push_back(curves.size() - 1);
  }
  return out;
}

namespace {
/// Ramer, Douglas and Peucker: keeps the farthest point while it is out of tolerance.
void keep_between(const Ring& ring, std::size_t first, std::size_t last, double tolerance,
                  std::vector<bool>& keep) {
  double worst = tolerance;
  std::size_t at = first;
  for (std::size_t i = first + 1; i < last; ++i) {
    const double off = distance_to_segment(ring[i], ring[first], ring[last % ring.size()]);
    if (off > worst) {
      worst = off;
      at = i;
    }
  }
  if (at == first) return;
  keep[at] = true;
  keep_between(ring, first, at, tolerance, keep);
  keep_between(ring, at, last, tolerance, keep);
}
}  // namespace

Ring simplified(const Ring& ring, double tolerance) {
  const std::size_t n = ring.size();
  if (n < 4) return ring;
  std::size_t far = 0;
  for (std::size_t i = 0; i < n; ++i) {
    if (distance(ring[i], ring[0]) > distance(ring[far], ring[0])) far = i;
  }
  std::vector<bool> keep(n, false);
  keep[0] = keep[far] = true;
  keep_between(ring, 0, far, tolerance, keep);
  keep_between(ring, far, n, tolerance, keep);
  Ring out;
  for (std::size_t i = 0; i < n; ++i) {
    if (keep[i]) out.push_back(ring[i]);
  }
  return out;
}

Ring simplified_line(const Ring& line, double tolerance) {
  if (line.size() < 3) return line;
  std::vector<bool> keep(line.size(), false);
  keep.front() = keep.back() = true;
  // A line that ends where it began has no chord to measure from: its farthest point is kept.
  std::size_t far = 0;
  for (std::size_t i = 0; i < line.size(); ++i) {
    if (distance(line[i], line[0]) > distance(line[far], line[0])) far = i;
  }
  keep[far] = true;
  keep_between(line, 0, far, tolerance, keep);
  keep_between(line, far, line.size() - 1, tolerance, keep);
  Ring out;
  for (std::size_t i = 0; i < line.size(); ++i) {
    if (keep[i]) out.push_back(line[i]);
  }
  return out;
}
}  // namespace furnish
