#pragma once

#include <string_view>
#include <vector>

#include "figure/figure.h"

namespace furnish {

/// A dog that a viewer is to know by its outline alone, and what a stranger is told of it.
struct KnownDog {
  std::string_view key, description;
  FigureInput input;
};

/// Ten dogs as salons see them, in the trims that the shipped styles leave, in millimetres.
std::vector<KnownDog> ten_dogs();
}  // namespace furnish
