#pragma once

#include <string>

#include "model/pet.h"
#include "model/salon.h"
#include "plan/plan.h"
#include "plan/plan_words.h"

namespace furnish {

/// The plan for a person at a terminal: aligned, short, in the salon's units, ending in a line end.
std::string plan_text(const Plan&, const Salon&, const Pet&, const PlanWords&);
}  // namespace furnish
