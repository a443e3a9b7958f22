#pragma once

#include <optional>

#include "output/structure.h"

namespace furnish {

/// The smallest box round all that the parts of an element draw; empty if they draw nothing.
std::optional<Rect> drawn_box(const std::vector<Part>&);
}  // namespace furnish
