#pragma once

#include <optional>
#include <span>
#include <vector>

#include "base/length.h"
#include "model/pet.h"
#include "model/salon.h"
#include "model/visit.h"
#include "plan/lengths.h"

namespace furnish {

/// A step in length between neighbours that is to be blended away. It is worked in the edge of the
/// longer coat, toward the shorter one.
struct Blend {
  Place longer, shorter;
  Length from, to;             ///< middle of what is left at `shorter`, and at `longer`
  std::vector<Tool> steps;     ///< of the drawer, short to long, between the two; may be empty
  std::optional<Shears> with;  ///< thinning or blending shears of the drawer
};

/// Seams where the middles of the two lengths differ by more than the salon's step and more than
/// its ratio, in order of the seams. None where the style wants a line, at a place that an alert
/// avoids, or where nobody says what is done on one side; nor at pads, sanitary area, corners of
/// the eyes, or between ears and what they hang over; nor between two lengths that are both
/// natural. Left and right stand once where they are alike. No shears and no tool
/// that the pet's handling or its owner rules out.
std::vector<Blend> blends(const Salon&, const Pet&, std::span<const PartLength>,
                          const Visit* latest);
}  // namespace furnish
