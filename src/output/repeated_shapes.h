#pragma once

#include <cstddef>
#include <vector>

#include "output/content_path.h"

namespace furnish {

/// Where a shape stands: turned over from left to right or not, then so much larger, then moved.
struct Placing {
  bool mirrored = false;
  double scale = 1, x = 0, y = 0;
};
/// Items of a page from the first to the last, that draw a shape.
struct Instance {
  std::size_t page = 0, first = 0, last = 0;
  Placing placing;  ///< of the shape as the largest of its instances has it
};
struct RepeatedShape {
  std::vector<Instance> instances;  ///< at least two
  std::size_t largest = 0;          ///< among them
};

/// What is drawn more than once on some pages and worth drawing once: outlines that follow on each
/// other, each like the other's but for place, size and side.
std::vector<RepeatedShape> repeated_shapes(const std::vector<std::vector<ContentItem>>& pages);
}  // namespace furnish
