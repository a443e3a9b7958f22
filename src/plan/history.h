#pragma once

#include <span>
#include <vector>

#include "base/date.h"
#include "model/pet.h"
#include "model/visit.h"

namespace furnish {

class DiagnosticSink;

/// Visits that were made and done by `today`, oldest first; those of one day by their numbers. One
/// after today or before birth is left out, with a warning at its date; one of an earlier day that
/// nobody finished too, and any that does not say what was done. One that was not done is left out
/// without a word. Points into `visits`.
std::vector<const Visit*> history(const Pet&, std::span<const Visit> visits, Date today,
                                  DiagnosticSink&);
/// The same with those that are not done: what was seen, weighed and found is so all the same.
std::vector<const Visit*> seen_by(const Pet&, std::span<const Visit> visits, Date today);
/// The last of them but those that are still open, if it was not done; else null.
const Visit* sent_home(std::span<const Visit* const> seen);
}  // namespace furnish
