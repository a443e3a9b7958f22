#pragma once

#include <vector>

#include "figure/drawing.h"
#include "page/frame.h"

namespace furnish {

/// Turns units of the figure into places on the page.
struct OnPaper {
  double scale = 1;             ///< millimetres a unit
  double left = 0, ground = 0;  ///< where x 0 and the ground stand, in mm
  bool mirrored = false;

  Vec mm(Vec p) const { return {left + (mirrored ? -p.x : p.x) * scale, ground - p.y * scale}; }
  Point point(Vec p) const {
    const Vec at = mm(p);
    return {Length::mm(at.x), Length::mm(at.y)};
  }
  Contour contour(const std::vector<Bezier>&, bool closed) const;
  Contour contour(const Ring&) const;
  std::vector<Contour> contours(const Shape&) const;
  Shape in_mm(const Shape&) const;
  PathMark path(const Painted&, Length weight) const;
};

/// A dog with these corners (units) in the middle of the box, so large a share of what the box
/// could hold, and no higher than `most`.
OnPaper standing_in(const Rect& box, Length most, double share, Vec low, Vec high, Side);

/// A circle of four curves round a place in millimetres.
Contour circle(Vec middle, double radius);
/// A closed contour of straight lines through places in millimetres.
Contour polygon(const Ring&);
inline Point point_of(Vec mm) {
  return {Length::mm(mm.x), Length::mm(mm.y)};
}
}  // namespace furnish
