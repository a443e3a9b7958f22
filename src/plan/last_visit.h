#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/date.h"
#include "base/measures.h"
#include "model/pet.h"
#include "model/visit.h"

namespace furnish {

/// A place that came in matted.
struct MattedPlace {
  Place place;
  int grade = 0;  ///< 0 to 4; 0 where only `encircling` was said
  bool encircling = false;
};

/// What the last visit hands on to the next one. Holds what is for staff.
struct LastVisit {
  Date date;
  int number = 1;  ///< of that day
  std::string groomer;
  FreeText not_done;              ///< why it was not; empty: it was
  std::optional<Date> groomed;    ///< where it was not done: when the pet was groomed last
  std::vector<MattedPlace> mats;  ///< worst first, then in order of place
  FreeText behaviour, helped;     ///< what frightened it, and what helped; staff
  TrimRules otherwise;            ///< what was done otherwise than planned, each with its why
  std::optional<Mass> weight;     ///< to compare with
  std::string told;               ///< to the owner
  std::optional<Date> next;       ///< agreed
  std::vector<Consent> consents;  ///< also those that nobody signed yet
  int photos_before = 0, photos_after = 0;
};

/// Of the last visit of the history; empty without one. `history`: oldest first.
std::optional<LastVisit> last_visit(std::span<const Visit* const> history);
/// Of the last one up to `today`, but for one of today that is still being written. Where one that
/// was not done came later, it is that one. Where one that nobody finished did and saw how the pet
/// was (it bit), it is that one, of which nothing counts as done or said. `seen`: the history with
/// those, see seen_by().
std::optional<LastVisit> visit_before(std::span<const Visit* const> history,
                                      std::span<const Visit* const> seen, Date today);
/// Where the coat is still matted so that no comb opens it, or right round: as visits found it,
/// less what was cut there since. What a visit that was done says nothing of is gone; one that was
/// not leaves what it does not name as it was. In order of place. `seen`: see seen_by().
std::vector<MattedPlace> mats_left(const Pet&, std::span<const Visit* const> seen);
}  // namespace furnish
