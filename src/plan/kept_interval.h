#pragma once

#include <chrono>
#include <optional>
#include <span>

#include "model/visit.h"

namespace furnish {

/// How often a pet really comes.
struct KeptInterval {
  std::chrono::days median{0};
  int visits = 0;  ///< days of visits it comes from, two at least
};

/// Median of the days between one day of visits and the next; of an even number, the middle of the
/// two in the middle, rounded down. Empty before the second. `history`: oldest first.
std::optional<KeptInterval> kept_interval(std::span<const Visit* const> history);
}  // namespace furnish
