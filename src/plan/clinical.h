#pragma once

#include "base/length.h"
#include "model/pet.h"
#include "plan/health.h"

namespace furnish {

// What rules and pages ask about a dog's body, decided once for all of them.

/// True if the pet's file names the condition under [health].
bool has_condition(const Pet&, Condition);

/// A dog that may come to want breath, when it is hot or frightened: a flat face, a weak heart, a
/// collapsing windpipe, old age. Common practice, no source.
bool short_of_breath(const Pet&, AgeGroup);
/// A dog that heat kills first: those, and the very young. A flat face has about twice the odds of
/// heat illness (Hall, Carter, O'Neill, Scientific Reports 2020); the rest common practice.
bool must_not_overheat(const Pet&, AgeGroup);

/// True if a double coat may come back patchy or late where its body is left so long: under
/// double_coat_shortest_mm (trade/health.h, with its source).
bool too_short_for_double_coat(const Pet&, Region, Length left);
}  // namespace furnish
