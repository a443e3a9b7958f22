#include "figure/polygon.h"

#include <algorithm>
#include <clipper.hpp>
#include <limits>

namespace furnish {
namespace {
namespace cl = ClipperLib;
constexpr double grid = 1000;

cl::Path path_of(const Ring& ring) {
  cl::Path out;
  out.reserve(ring.size());
  for (const Vec& p : ring) {
    out.emplace_back(static_cast<cl::cInt>(std::llround(p.x * grid)),
                     static_cast<cl::cInt>(std::llround(p.y * grid)));
  }
  return out;
}

cl::Paths paths_of(const Shape& shape) {
  cl::Paths out;
  out.reserve(shape.size());
  for (const Ring& ring : shape) out.push_back(path_of(ring));
  return out;
}

/// Clipper's outlines run counterclockwise; ours clockwise.
Shape shape_of(const cl::Paths& paths) {
  Shape out;
  for (const cl::Path& path : paths) {
    Ring ring;
    ring.reserve(path.size());
    for (auto p = path.rbegin(); p != path.rend(); ++p) {
      ring.push_back({static_cast<double>(p->X) / grid, static_cast<double>(p->Y) / grid});
    }
    out.push_back(std::move(ring));
  }
  return out;
}

Shape combine(cl::ClipType how, const Shape& a, const Shape& b) {
  cl::Clipper clipper;
  clipper.AddPaths(paths_of(a), cl::ptSubject, true);
  clipper.AddPaths(paths_of(b), cl::ptClip, true);
  cl::Paths out;
  clipper.Execute(how, out, cl::pftNonZero, cl::pftNonZero);
  return shape_of(out);
}
}  // namespace

Shape unite(const std::vector<Ring>& rings) {
  cl::Clipper clipper;
  for (const Ring& ring : rings) {
    cl::Path path = path_of(ring);
    if (!cl::Orientation(path)) cl::ReversePath(path);
    clipper.AddPath(path, cl::ptSubject, true);
  }
  cl::Paths out;
  clipper.Execute(cl::ctUnion, out, cl::pftNonZero, cl::pftNonZero);
  return shape_of(out);
}

Shape unite(const Shape& a, const Shape& b) {
  return combine(cl::ctUnion, a, b);
}
Shape unite(std::initializer_list<Shape> shapes) {
  cl::Clipper clipper;
  for (const Shape& shape : shapes) clipper.AddPaths(paths_of(shape), cl::ptSubject, true);
  cl::Paths out;
  clipper.Execute(cl::ctUnion, out, cl::pftNonZero, cl::pftNonZero);
  return shape_of(out);
}
Shape intersect(const Shape& a, const Shape& b) {
  return combine(cl::ctIntersection, a, b);
}
Shape subtract(const Shape& a, const Shape& b) {
  return combine(cl::ctDifference, a, b);
}

double area(const Ring& ring) {
  double twice = 0;
  for (std::size_t i = 0; i < ring.size(); ++i)
    twice += cross(ring[i], ring[(i + 1) % ring.size()]);
  return twice / 2;
}

double area(const Shape& shape) {
  double sum = 0;
  for (const Ring& ring : shape) sum -= area(ring);
  return std::max(0.0, sum);
}

bool holds(const Shape& shape, Vec p) {
  bool inside = false;
  for (const Ring& ring : shape) {
    for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
      const Vec a = ring[i], b = ring[j];
      if ((a.y > p.y) != (b.y > p.y) && p.x < (b.x - a.x) * (p.y - a.y) / (b.y - a.y) + a.x) {
        inside = !inside;
      }
    }
  }
  return inside;
}

Ring convex_hull(Ring points) {
  std::ranges::sort(points, [](Vec a, Vec b) { return a.x != b.x ? a.x < b.x : a.y < b.y; });
  if (points.size() < 3) return points;
  Ring hull(2 * points.size());
  std::size_t k = 0;
  const auto turn = [&](Vec p) { return cross(hull[k - 1] - hull[k - 2], p - hull[k - 2]); };
  for (const Vec& p : points) {
    while (k >= 2 && turn(p) <= 0) --k;
    hull[k++] = p;
  }
  const std::size_t lower = k + 1;
  for (auto p = points.rbegin() + 1; p != points.rend(); ++p) {
    while (k >= lower && turn(*p) <= 0) --k;
    hull[k++] = *p;
  }
  hull.resize(k - 1);
  return hull;
}

double distance_to_edge(const Shape& shape, Vec p) {
  double best = std::numeric_limits<double>::max();
  for (const Ring& ring : shape) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      best = std::min(best, distance_to_segment(p, ring[i], ring[(i + 1) % ring.size()]));
    }
  }
  return best;
}

Shape without_specks(const Shape& shape, double least) {
  Shape out;
  for (const Ring& ring : shape) {
    if (std::abs(area(ring)) >= least) out.push_back(ring);
  }
  return out;
}

Shape grown(const Shape& shape, double by) {
  cl::ClipperOffset offset(2, 0.1 * grid);
  offset.AddPaths(paths_of(shape), cl::jtRound, cl::etClosedPolygon);
  cl::Paths out;
  offset.Execute(out, by * grid);
  return shape_of(out);
}
}  // namespace furnish
