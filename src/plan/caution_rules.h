#pragma once

#include <string>
#include <vector>

#include "plan/cautions.h"

namespace furnish {

/// The predicates, one function a theme; each adds what it finds. Used by cautions.cpp alone.
using Found = std::vector<Caution>;
void find_tool_cautions(const CautionInput&, Found&);    ///< blades, combs, shears, mats
void find_bath_cautions(const CautionInput&, Found&);    ///< water, products, dryers
void find_health_cautions(const CautionInput&, Found&);  ///< age, weight, vaccination, vets' work
/// What handling and dislikes rule out; felt.
void find_handling_cautions(const CautionInput&, Found&);

/// What a caution says of this pet, in English and as data. The key is what follows the rule's own:
/// "-past" for "mat-wound-past".
struct Saying {
  std::string english{}, key{};
  std::vector<CautionFact> facts{};
};
/// With the table's words where none are given.
Caution make_caution(RuleId, SourceSpan, Saying what = {}, Saying instead = {});
/// "Left hock", "Neck and shoulders".
std::string places_phrase(const std::vector<Place>&);
}  // namespace furnish
