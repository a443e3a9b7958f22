#pragma once

#include <initializer_list>
#include <vector>

#include "figure/vec.h"

namespace furnish {

/// Outlines and holes of an area; outlines run clockwise (y up), their inside on the right.
using Shape = std::vector<Ring>;

/// Everything that any of the rings holds, however each of them runs. Rings to 1/1000 of a unit.
Shape unite(const std::vector<Ring>&);
Shape unite(const Shape&, const Shape&);
/// Of many at once, which takes less than one after the other.
Shape unite(std::initializer_list<Shape>);
Shape intersect(const Shape&, const Shape&);
Shape subtract(const Shape&, const Shape&);

/// Signed: negative for a ring that runs clockwise.
double area(const Ring&);
/// Of the whole shape, holes taken out; never negative.
double area(const Shape&);
bool holds(const Shape&, Vec);
Ring convex_hull(Ring points);
/// Distance to the nearest edge, whichever side the point is on.
double distance_to_edge(const Shape&, Vec);
/// Outlines and holes under `least` in area left out.
Shape without_specks(const Shape&, double least);
/// The shape grown by `by` on all sides with round corners; shrunk if it is negative.
Shape grown(const Shape&, double by);
}  // namespace furnish
