#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/date.h"
#include "base/source.h"
#include "model/pet.h"
#include "model/salon.h"
#include "model/visit.h"
#include "plan/handling_rules.h"
#include "plan/health.h"
#include "plan/lengths.h"
#include "plan/open_findings.h"
#include "plan/order.h"
#include "plan/plan_words.h"
#include "trade/safety.h"

namespace furnish {

class DiagnosticSink;

/// A safety rule that applies to this pet's plan, and the line that makes it apply.
struct Caution {
  RuleId rule{};
  Signal signal{};                     ///< the rule's, or raised where it says so
  CautionText what, instead;           ///< of this pet: what is the matter, and what to do
  std::vector<Place> places;           ///< in order; empty: not about a place
  SourceSpan span;                     ///< the line that causes it
  SourceSpan against;                  ///< the line it stands against; no file: none
  std::optional<Acceptance> accepted;  ///< on purpose: printed as accepted, never left out
};

/// What the rules look at besides the pet's file.
struct CautionInput {
  const Salon& salon;
  const Pet& pet;
  const Visit* latest = nullptr;  ///< on or before today
  Date today;
  std::span<const PartLength> lengths;
  std::span<const WorkStep> order;
  const Health& health;
  const Drying& drying;
  std::span<const OpenFinding> findings{};
};

/// Particular ones and standing advice, gravest first, then in the order of the rules, then of the
/// places and lines.
std::vector<Caution> cautions(const CautionInput&);
/// Acceptances of rules that do not apply to this plan.
std::vector<Acceptance> stale_acceptances(const Pet&, std::span<const Caution>);
/// Every key that a CautionText may have, each once.
std::vector<std::string> caution_keys();
/// What is the matter, begun with a capital letter.
std::string what_text(const Caution&, const PlanWords&);
/// For `furnish check`: each caution that nobody accepted, as a warning "caution" with its line.
/// `pets`: whom it is about, where its line is not in their own file.
void report(std::span<const Caution>, const PlanWords&, DiagnosticSink&,
            std::string_view pets = {});
}  // namespace furnish
