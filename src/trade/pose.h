#pragma once

#include <string_view>

namespace furnish {

/// What free words say of how a dog may be held while it is worked on.
struct PoseWords {
  bool lies = false;      ///< "let him lie", "on her side"
  bool feet_low = false;  ///< "lift no rear leg", "foot held low"
};

/// Reads clause by clause (see trade/phrases.h for negation). A leg that is to be low, or lifted
/// only so far, is not lifted. What it cannot understand: other languages; a dog that "cannot
/// stand"; which of the legs is meant. In doubt the feet stay low.
PoseWords read_pose(std::string_view words);
}  // namespace furnish
