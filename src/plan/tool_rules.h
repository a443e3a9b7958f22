#pragma once

#include <optional>
#include <vector>

#include "base/length.h"
#include "model/pet.h"
#include "model/visit.h"
#include "trade/safety.h"

namespace furnish {

/// The safety rules that a tool on a place goes against, in order of the rules: those about blades,
/// combs and shears. `left`: the least that is left, if known. `latest`: whose mats count; may be
/// null.
std::vector<RuleId> tool_rules(const Tool&, std::optional<Length> left, Place, const Pet&,
                               const Visit* latest, Lay = Lay::with);
/// True if the pet's skin is thin, folded or tears: by its conditions, or by the words of an alert
/// or of its health notes ("skin tears", "tearing skin", "thin skin", "fragile skin"; words of
/// other languages, and wounds that say no such thing, are not understood).
bool tearing_skin(const Pet&);

/// True if the rule says "not this tool here", false if it says "take care" (ear-edge, ear-mats,
/// sanitary-shears).
bool forbids(RuleId);

/// True if one of tool_rules() forbids it. An accepted double-coat-short permits any length there;
/// no other acceptance reaches beyond the tool it was given for.
bool forbidden(const Tool&, std::optional<Length> left, Place, const Pet&, const Visit* latest);
}  // namespace furnish
