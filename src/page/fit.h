#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "base/length.h"

namespace furnish {

/// One block's share of a column; `stretch` is its part of spare room (0: none).
struct Spring {
  Length wanted, least;
  int stretch = 1;
};

struct Fit {
  enum class Status : std::uint8_t { roomy, squeezed, overflow };
  Status status = Status::roomy;
  std::vector<Length> heights;  ///< one a spring, top to bottom
};

/// Shares `room` among `springs`. Squeezed, or roomy with any stretch, the heights add up to `room`
/// exactly. Never below `least`: if the leasts do not fit it says overflow and gives the leasts.
/// Rounds the running total, so a rigid spring stays rigid. O(n).
Fit fit_column(std::span<const Spring> springs, Length room);
}  // namespace furnish
