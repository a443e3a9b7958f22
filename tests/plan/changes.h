#pragma once

#include <compare>

namespace furnish {

/// What an order of work costs: changes from one step to the next, those of tool before those of
/// position.
struct Changes {
  int tool = 0, stance = 0;
  friend constexpr auto operator<=>(Changes, Changes) = default;
};
}  // namespace furnish
