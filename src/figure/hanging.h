#pragma once

#include "figure/hair.h"

namespace furnish {

/// The hair of a tail: on both sides of its line, feathered below.
Furred furred(const Tail&, const DrawnCoat&);
/// Hair that grows on the flanks and hangs over legs and belly, in drop and silky coats; no locks
/// for others.
Furred curtain(const Build&, const DrawnCoat&);
}  // namespace furnish
