#pragma once

#include <optional>
#include <span>
#include <vector>

#include "base/date.h"
#include "base/source.h"
#include "model/audience.h"
#include "model/free_text.h"
#include "model/visit.h"

namespace furnish {

/// Something found at a visit that no later visit has closed: it is looked for at the next one.
struct OpenFinding {
  Place place;
  FreeText what;     ///< as it was last found
  FreeText advised;  ///< the newest advice; empty if there was none
  /// Staff if what was found, or its advice, is for staff.
  Audience audience = Audience::staff;
  std::vector<Date> seen;  ///< days on which it was found, oldest first; never empty
  SourceSpan span;         ///< of the newest
  /// A later visit saw it again, in words for staff only; in a list for everyone alone.
  std::optional<Date> seen_since{};
  /// Found this often, its days tell more than the last of them (common practice, no source).
  bool has_history() const { return seen.size() >= 3; }
};

/// What all visits together leave open, in the order in which it was first found. A finding is
/// closed by a later one of the same place and thing that says `closed`, by one of that place that
/// says `closed` and no `what`, or by a visit that found the place well; of a pair found on both
/// sides, the other side stays. The same thing is what begins with the same words before its first
/// comma, but for "still" and the like: sizes and looks change. "Small lump" and "lump" are not
/// seen to be one, and stand as two, which asks to look twice and not less. `history`: oldest
/// first.
std::vector<OpenFinding> open_findings(std::span<const Visit* const> history);

/// The same for an owner's page: of what was found only what is for everyone, in the words that
/// are. What staff closed is closed, whoever may read of it; what staff saw again since is no
/// longer as those words say, and its advice may be done.
std::vector<OpenFinding> open_for_everyone(std::span<const Visit* const> history);
}  // namespace furnish
