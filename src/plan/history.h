#pragma once

#include <span>
#include <vector>

#include "base/date.h"
#include "model/pet.h"
#include "model/visit.h"

namespace furnish {

class DiagnosticSink;

/// Visits that count on `today`, oldest first; those of one day by their numbers. One
/// after today or before birth is left out, with a warning at its date. Points into `visits`.
std::vector<const Visit*> history(const Pet&, std::span<const Visit> visits, Date today,
                                  DiagnosticSink&);
}  // namespace furnish
