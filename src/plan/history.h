#pragma once

#include <span>
#include <vector>

#include "base/date.h"
#include "model/pet.h"
#include "model/visit.h"

namespace furnish {

class DiagnosticSink;

/// Visits that were made by `today`, oldest first; those of one day by their numbers. One
/// after today or before birth is left out, with a warning at its date; one of an earlier day that
/// nobody finished too. Points into `visits`.
std::vector<const Visit*> history(const Pet&, std::span<const Visit> visits, Date today,
                                  DiagnosticSink&);
/// The same with those that are not finished: what was seen, weighed and found is so all the same.
std::vector<const Visit*> seen_by(const Pet&, std::span<const Visit> visits, Date today);
}  // namespace furnish
