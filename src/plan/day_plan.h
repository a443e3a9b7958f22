#pragma once

#include <chrono>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "model/pet.h"
#include "model/salon.h"
#include "model/visit.h"
#include "plan/bath.h"
#include "plan/day_checks.h"
#include "plan/plan.h"

namespace furnish {

/// A pet that is booked, with its plan of that day.
struct DayPet {
  const Pet& pet;
  const Plan& plan;
  std::span<const Visit> visits;  ///< oldest first
  bool all_visits = true;         ///< false: a visit's file has faults, and is not among them
  /// Its own file has faults: it holds less than that says, and only what can hurt is told of it.
  bool faulty = false;
};

/// One booking, and whether it can be done.
struct DayRow {
  const Booking* booking = nullptr;
  const DayPet* pet = nullptr;                   ///< null: its file cannot be read, or is not there
  std::optional<std::chrono::minutes> expected;  ///< empty: nobody knows
  std::optional<std::chrono::minutes> booked;    ///< until it is collected; empty: nobody said
  std::vector<const Booking*> clashes;           ///< at once with it, in the order of their hours
  /// The groomer's next pet, if it comes before this one is collected; null where that is a clash.
  const Booking* before_collected = nullptr;
  /// By how much the work is expected to run over what is booked; 0: it does not.
  std::chrono::minutes over() const;
};

/// All bookings of one groomer, by their hours.
struct DayBlock {
  std::string groomer;  ///< as first written; empty: no groomer is named
  std::vector<DayRow> rows;
  std::chrono::minutes expected{0};  ///< sum of what is known
  std::chrono::minutes booked{0};    ///< the same

  /// Adds the bookings of another, and their minutes.
  void take(const DayBlock&);
};

/// Why an owner is to be rung before the pet comes.
struct DayCall {
  const DayPet* pet = nullptr;
  /// Open, for the owner too, and the visit that last saw it has no word of what the owner was
  /// told.
  std::vector<const OpenFinding*> untold;
  /// Required and not valid on the day, and nobody accepted that.
  std::vector<const Caution*> vaccinations;
  /// Its loss of weight, if the visit that last weighed it says nothing of what the owner was told.
  const Caution* weight = nullptr;
  /// What to do says to ring the owner; English only.
  std::vector<const Alert*> asked;
  bool no_contact = false;  ///< neither telephone nor e-mail is on file
};

/// A product that is mixed on a day, and one of the day's pets that may not have what is in it,
/// whether or not it is planned for that pet. A pet whose plan uses it on purpose is none.
struct NotFor {
  std::string product;
  const DayPet* pet = nullptr;
  std::vector<std::string> what;  ///< as unwanted_in()
};

/// Everything that is worked out for a salon's day. Points into what it was made from.
struct DayPlan {
  bool closed = false;              ///< the salon is, on that day
  std::vector<DayBlock> blocks;     ///< by the hour of their first booking; no groomer last
  std::vector<ProductTotal> mixes;  ///< of all readable pets, each counted once
  /// Names of the others, else their keys; nothing is mixed for them. By their first bookings.
  std::vector<std::string> not_counted;
  std::vector<NotFor> not_for;  ///< in the order of `mixes`, then of the first bookings
  std::vector<DayCall> calls;   ///< by the hour of the pet's first booking
  std::vector<UnreadBooking> unread;
  std::vector<std::string> salon_unread;  ///< of any of the pets
};

/// True if what is on file of how to lift, hold or handle it asks for a second person; English
/// only.
bool needs_two(const Pet&);

/// Pure. `pets`: by their keys, those that can be read. `warnings`: of this day.
DayPlan day_plan(const Day&, const std::map<std::string, DayPet>& pets,
                 std::span<const DayWarning> warnings);
}  // namespace furnish
