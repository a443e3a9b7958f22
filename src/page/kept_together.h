#pragma once

#include <cstdint>

namespace furnish {

/// What no line may end between, the more the better.
enum class Keeping : std::uint8_t {
  nothing,
  numbers,  ///< a number and what it counts, a sign and its numbers, a mark and its word
  labels    ///< these, and a label and its first word
};

/// True if no line may end at the one space between these two characters: between a number and what
/// it counts ("4 years", "24 November", "555 0170"), at either side of a sign that joins or
/// compares
/// ("45 ml + 455 ml", "≥ 3"), before marks that stand off in French and inside its quotes, after a
/// dot that parts; and, as a label's, after a colon. In whoever's words: each is a thing that is
/// read as one.
bool kept_together(char32_t before, char32_t after, Keeping = Keeping::labels);
}  // namespace furnish
