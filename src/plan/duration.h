#pragma once

#include <chrono>
#include <optional>
#include <span>

#include "base/measures.h"
#include "model/pet.h"
#include "model/salon.h"
#include "model/visit.h"

namespace furnish {

/// Expected time of a visit.
struct Duration {
  std::chrono::minutes expected{0}, low{0}, high{0};
  int visits = 0;  ///< it comes from; 0: from the salon's formula
};

/// Median of the pet's own visits, with the quartiles from four visits on, the shortest and longest
/// of two and three, and the salon's spread about a single one. Without any: base + surface · (bath
/// + dry + brush) + parts · (clip or scissor), with the salon's coefficients (see TimeSettings),
/// which needs the weight, else empty.
std::optional<Duration> duration(const Salon&, const Pet&, std::optional<Mass> weight,
                                 std::span<const Visit* const> history);
/// Sum for a day: expected adds up, so do both ends.
Duration total(std::span<const Duration>);
}  // namespace furnish
