#include "figure/on_paper.h"

#include <algorithm>

namespace furnish {

Contour OnPaper::contour(const std::vector<Bezier>& line, bool closed) const {
  Contour out{{}, {}, closed};
  if (line.empty()) return out;
  out.start = point(line.front().from);
  for (const Bezier& curve : line) {
    out.curves.push_back({point(curve.control1), point(curve.control2), point(curve.to)});
  }
  return out;
}

Contour OnPaper::contour(const Ring& ring) const {
  Ring there;
  for (const Vec& p : ring) there.push_back(mm(p));
  return polygon(there);
}

std::vector<Contour> OnPaper::contours(const Shape& shape) const {
  std::vector<Contour> out;
  for (const Ring& ring : shape) out.push_back(contour(ring));
  return out;
}

Shape OnPaper::in_mm(const Shape& shape) const {
  Shape out;
  for (const Ring& ring : shape) {
    Ring& there = out.emplace_back();
    for (const Vec& p : ring) there.push_back(mm(p));
  }
  return out;
}

PathMark OnPaper::path(const Painted& painted, Length weight) const {
  PathMark out;
  for (const auto& line : painted.curves) {
    if (!line.empty()) out.contours.push_back(contour(line, painted.closed));
  }
  out.fill = painted.fill;
  out.stroke = painted.stroke;
  out.weight = scaled(weight, painted.weight);
  return out;
}

OnPaper standing_in(const Rect& box, Length most, double share, Vec low, Vec high, Side side) {
  constexpr double edge = 1, least_scale = 0.05;
  const double room_x = box.size.width.in_mm() - 2 * edge,
               room_y = std::min(box.size.height, most).in_mm() - 2 * edge;
  OnPaper paper;
  const Vec size = high - low;
  paper.scale = std::max(least_scale, share * std::min(room_x / size.x, room_y / size.y));
  paper.mirrored = side == Side::right;
  const double middle = (low.x + high.x) / 2 * (paper.mirrored ? -1 : 1);
  paper.left = box.left().in_mm() + box.size.width.in_mm() / 2 - middle * paper.scale;
  paper.ground =
      box.top().in_mm() + box.size.height.in_mm() / 2 + (low.y + high.y) / 2 * paper.scale;
  return paper;
}

Contour circle(Vec c, double r) {
  const double k = r * 0.5523;  // the usual fit of a quarter circle by one curve
  const auto at = [&](double x, double y) { return point_of({c.x + x, c.y + y}); };
  return {at(r, 0),
          {{at(r, k), at(k, r), at(0, r)},
           {at(-k, r), at(-r, k), at(-r, 0)},
           {at(-r, -k), at(-k, -r), at(0, -r)},
           {at(k, -r), at(r, -k), at(r, 0)}},
          true};
}

Contour polygon(const Ring& ring) {
  Contour out;
  if (ring.empty()) return out;
  out.start = point_of(ring.front());
  Point last = out.start;
  for (std::size_t i = 1; i < ring.size(); ++i) {
    const Point next = point_of(ring[i]);
    out.curves.push_back({last, next, next});
    last = next;
  }
  return out;
}
}  // namespace furnish
