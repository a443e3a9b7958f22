#pragma once

#include <span>
#include <vector>

#include "base/date.h"
#include "base/length.h"
#include "model/pet.h"
#include "model/visit.h"

namespace furnish {

/// What one part of the trim was really left at: "16 mm, five visits, 29 September". Measured once
/// it is no target yet, only what one visit left.
struct Target {
  Place place;
  Length median;
  Date newest;
  int visits = 0;  ///< one at least
  bool is_target() const { return visits > 1; }
};

/// For each part of the trim, in its order, the median of the lengths that were measured when the
/// pet went out, over the visits on which it was cut with the tool that the trim names now, and in
/// its direction. A visit records what was done otherwise,
/// and else was as planned: that the plan was another then, nobody wrote down, so those visits
/// count. Of an even number the middle of the two in the middle. `history`: oldest first.
std::vector<Target> targets(const Pet&, std::span<const Visit* const> history);
/// The target of exactly this place; null if there is none.
const Target* find_target(std::span<const Target>, Place);
}  // namespace furnish
