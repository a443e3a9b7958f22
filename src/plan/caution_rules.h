#pragma once

#include <string_view>
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
/// What visits found and nobody closed.
void find_finding_cautions(const CautionInput&, Found&);

/// What a caution says of this pet: which of its rule's sentences, "past" or the usual one, and
/// what that names.
struct Saying {
  std::string_view variant{};
  std::vector<CautionFact> facts{};
};
/// With the rule's usual signal.
Caution make_caution(RuleId, SourceSpan, Saying what = {}, Saying instead = {});
}  // namespace furnish
