#pragma once

#include <span>
#include <vector>

#include "plan/matters.h"
#include "plan/order.h"

namespace furnish {

// Where the work stands that a plan's cautions forbid or limit. Whoever writes a line of work, on
// whatever page, asks here what stands beside it; which rule touches what is in the rules' table
// (trade/safety.h). What was accepted on purpose restrains nothing, nor does standing advice.

/// True if the caution is about cutting at one of these places.
bool restrains(const Caution&, std::span<const Place>);
/// What is to be said beside the cutting of these places, gravest first; each caution as it is of
/// the plan, so its places may be more. Empty for most.
std::vector<Matter> restraints(std::span<const Caution>, std::span<const Place>);
/// The same beside a step: a cut or a finish, the product or the water that it is about, the dryer.
std::vector<Matter> restraints(std::span<const Caution>, const WorkStep&);

/// The entry in the direction that is really cut: with the lay where a caution allows no other, and
/// then nobody says another.
TrimEntry taken(const TrimPart&, std::span<const Caution>);
/// The whole trim so, the style's own lines with it.
ResolvedTrim taken(const ResolvedTrim&, std::span<const Caution>);
}  // namespace furnish
