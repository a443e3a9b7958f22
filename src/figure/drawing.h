#pragma once

#include <optional>
#include <vector>

#include "figure/edge.h"
#include "figure/hair.h"
#include "figure/polygon.h"
#include "figure/skeleton.h"
#include "page/frame.h"

namespace furnish {

/// Curves drawn with one pen; `weight` is in line widths of the figure's outline.
struct Painted {
  std::vector<std::vector<Bezier>> curves;
  std::optional<Ink> fill;
  std::optional<Ink> stroke;
  double weight = 1;
  bool closed = true;
};

/// The dog in units of the figure, facing left, layer by layer from back to front.
struct Drawing {
  std::vector<Painted> behind;  ///< far legs and ear
  Painted body;                 ///< everything near but ear and a tail over the back
  std::vector<Painted> inner;   ///< face, feet, creases, hair inside
  std::vector<Painted> tail;    ///< a tail carried over the back; else empty
  std::vector<Painted> ear;
  Shape near;                   ///< what `body` fills
  Shape ear_shape, tail_shape;  ///< with coat; tail_shape also of a tail that `body` holds
  bool tail_in_front = false;   ///< of the body, which does not hold it
  Shape silhouette;             ///< of the whole dog, far legs too
  std::array<Shape, region_count> areas;  ///< where each region is seen; small ones may be empty
};

Drawing drawing_of(const Build&, const DrawnCoat&);
/// For one about 30 mm wide: shapes without strokes, of fewer hairs, and areas of these regions
/// alone.
Drawing small_drawing_of(const Build&, DrawnCoat, const std::vector<Region>& areas);
/// Its silhouette alone, in a third of the time.
Shape silhouette_of(const Build&, const DrawnCoat&);
}  // namespace furnish
