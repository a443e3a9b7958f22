#pragma once

#include <array>
#include <vector>

#include "figure/drawing.h"
#include "figure/figure.h"

namespace furnish {

/// Corners of the box round a shape.
struct Bounds {
  Vec low{1e9, 1e9}, high{-1e9, -1e9};
  Vec size() const { return high - low; }
};
Bounds bounds_of(const Shape&);

/// In units of the figure, facing left; what is seen from the other side is its mirror image.
class DrawnDog {
 public:
  DrawnDog(const FigureInput&, Detail);

  /// Where a region is pointed at: its middle if that is seen, else the point of its area farthest
  /// from all edges, of an eight by eight grid.
  Vec aim(Region) const;
  /// Whether ear or tail hangs over all of it, so that what points at it seems to point at them.
  bool covered(Region) const;
  /// As `hatched`, of several regions at once: no white line parts those that touch.
  Shape hatched_together(const std::vector<Region>&) const;

  Build build;
  Drawing drawing;
  Shape before;
  Bounds bounds;
  /// What is hatched of a region: a little smaller than its area, so that white lines part
  /// neighbours. Empty for a region that is hardly seen; all empty of a dog drawn small.
  std::array<Shape, region_count> hatched;
};
}  // namespace furnish
