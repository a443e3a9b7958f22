#pragma once

#include <vector>

#include "figure/drawing.h"

namespace furnish {

/// Lines inside the body: eye, nose and mouth, toes, the creases of joints where the coat is short,
/// and hair along the lay where it is long.
std::vector<Painted> inner_lines(const Skeleton&, const DrawnCoat&, const Drawing&);
}  // namespace furnish
