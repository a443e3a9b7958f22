#pragma once

#include <span>

#include "model/pet.h"
#include "model/visit.h"

namespace furnish {

class DiagnosticSink;
class SourceSet;
class Words;

/// Where a visit's behaviour, finding or reason tells of a bite, in the words of the salon's
/// language, and no alert of the pet does: a warning at the newest such text, with the alert to
/// write. What a visit says nobody reads who opens the kennel a year later.
void report_untold_bite(const Pet&, std::span<const Visit>, const Words&, const SourceSet&,
                        DiagnosticSink&);
}  // namespace furnish
