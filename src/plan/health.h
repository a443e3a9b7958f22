#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/date.h"
#include "base/measures.h"
#include "base/source.h"
#include "model/pet.h"
#include "model/salon.h"
#include "model/visit.h"

namespace furnish {

class DiagnosticSink;

struct Weighing {
  Mass weight;
  std::optional<Date> on;  ///< empty: a weight in the pet's file without its day
  SourceSpan span;
};

/// Against an earlier weighing.
struct WeightChange {
  Weighing before;
  double percent = 0;  ///< gained; negative: lost
  bool mark = false;   ///< lost more than 5 %
  bool loss = false;   ///< lost more than 10 %, exactly
};

enum class VaccinationStatus : std::uint8_t { valid, not_yet, expired, missing };
struct VaccinationState {
  std::string name;
  VaccinationStatus status = VaccinationStatus::missing;
  std::optional<Date> given, from, until;  ///< counts on both days
  bool required = false;
  SourceSpan span;  ///< of the pet's line, else of the salon's rule
};

enum class AgeGroup : std::uint8_t { unknown, puppy, adult, senior };

struct Health {
  std::optional<Weighing> weight;                         ///< the newest
  std::optional<WeightChange> since_last, since_highest;  ///< the one before; the year's highest
  std::vector<VaccinationState> vaccinations;             ///< of the salon's rules, by name
  AgeGroup age_group = AgeGroup::unknown;
  std::optional<int> years, months;  ///< full ones
  bool about = false;                ///< its year or month of birth is known, and no more
};

/// The change to tell of: more than a tenth lost since the weighing before, else since the year's
/// highest; null if neither. Points into `health`.
const WeightChange* weight_lost(const Health& health);

/// The newest weighing on or before today; a weight without its day only where no other is known.
std::optional<Weighing> newest_weight(const Pet&, std::span<const Visit* const> history,
                                      Date today);

/// Over 10 years, over 7 at 40 kg and more: from the day after that birthday. Puppy: under 6
/// months.
AgeGroup age_group(Date born, std::optional<Mass> weight, Date today);
/// Where no more than a year or a month is known: old, or a puppy, if it may be.
AgeGroup age_group(const Birth& born, std::optional<Mass> weight, Date today);

/// A vaccination counts from its day plus the rule's wait (at once for a booster) through its day
/// plus the rule's validity.
VaccinationState vaccination_state(const VaccinationRule&, std::span<const Vaccination>,
                                   Date today);

/// All of it on a day: weighings on or before it count. Warns of a weight that looks like a slip.
Health health(const Salon&, const Pet&, std::span<const Visit* const> history, Date today,
              DiagnosticSink&);
}  // namespace furnish
