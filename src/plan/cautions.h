#pragma once

#include <optional>
#include <span>
#include <string>
#include <variant>
#include <vector>

#include "base/date.h"
#include "base/source.h"
#include "model/pet.h"
#include "model/salon.h"
#include "model/visit.h"
#include "plan/health.h"
#include "plan/lengths.h"
#include "plan/order.h"
#include "trade/health.h"
#include "trade/safety.h"
#include "trade/vet_words.h"

namespace furnish {

class DiagnosticSink;

/// One thing that a caution's sentence names besides its own words.
using CautionFact = std::variant<std::vector<Place>, Date, Mass, std::chrono::seconds, Condition,
                                 const Blade*, int, double, VetTask, std::string>;

/// A caution's sentence as data, so that it can be said in any language: the key of its pattern
/// under [rule] in a catalogue, and what stands at its places, in order.
struct CautionText {
  std::string key;
  std::vector<CautionFact> facts;
};

/// A safety rule that applies to this pet's plan, and the line that makes it apply.
struct Caution {
  RuleId rule{};
  Signal signal{};            ///< the rule's, or raised where it says so
  std::string what, instead;  ///< of this pet where it can be said, in English; no full stop
  CautionText what_said, instead_said;  ///< the same for other readers
  std::vector<Place> places;            ///< in order; empty: not about a place
  SourceSpan span;                      ///< the line that causes it
  SourceSpan against;                   ///< the line it stands against; no file: none
  std::optional<Acceptance> accepted;   ///< on purpose: printed as accepted, never left out
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
};

/// Gravest first, then in the order of the rules, then of the places and lines.
std::vector<Caution> cautions(const CautionInput&);
/// Acceptances of rules that do not apply to this plan.
std::vector<Acceptance> stale_acceptances(const Pet&, std::span<const Caution>);
/// For `furnish check`: each caution that nobody accepted, as a warning "caution" with its line.
void report(std::span<const Caution>, DiagnosticSink&);
}  // namespace furnish
