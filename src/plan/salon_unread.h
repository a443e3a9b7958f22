#pragma once

#include <string>
#include <vector>

#include "model/pet.h"
#include "model/salon.h"

namespace furnish {

/// What this pet's plan would have taken from parts of the salon's file that have faults, as they
/// are headed there: "[kit]", "[products.oat]"; in the order of the parts. What is worked out goes
/// without it.
std::vector<std::string> salon_unread(const Salon&, const Pet&);
}  // namespace furnish
