#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "base/source.h"
#include "model/pet.h"
#include "plan/open_findings.h"
#include "trade/home_matters.h"

namespace furnish {

/// An alert, or a finding that is still open, which is for staff though its owner should know of it
/// at home, and nothing for everyone speaks of the same.
struct StaffOnly {
  enum class What : std::uint8_t { alert, finding };
  What what = What::alert;
  HomeMatter matter{};
  SourceSpan span;
};

/// Of a pet and what its visits left open, in their order. A note for people, no rule: the salon
/// decides.
std::vector<StaffOnly> staff_only(const Pet&, std::span<const OpenFinding>);
}  // namespace furnish
