#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "base/geometry.h"

namespace furnish {

/// A label that belongs to a point.
struct LabelWish {
  Point at;
  Size size;
  bool must = false;  ///< printed even where it has to stand off, or on a line
};

/// What labels keep clear of.
struct LabelRoom {
  Rect area;                                   ///< none leaves it
  std::vector<std::pair<Point, Point>> lines;  ///< not over them if there is another way
  std::vector<Rect> taken;                     ///< never over these
  std::vector<Point> dots;                     ///< as over lines; `dot` is their radius
  Length dot, clear;                           ///< `clear`: between a dot and its label, and labels
};

/// A place for each label, the wishes served in the order they have. Close to its point: above,
/// below, at a corner, beside; one that must be printed goes farther away if it has to, over a line
/// last. No two overlap. Empty if there was no place; for one that must, only if the area has no
/// free spot of its size.
std::vector<std::optional<Rect>> place_labels(const std::vector<LabelWish>&, const LabelRoom&);

/// True if a part of the segment lies inside the rectangle.
bool crosses(const Rect&, Point from, Point to);
}  // namespace furnish
