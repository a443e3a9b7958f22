#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "app/generated.h"
#include "base/date.h"

namespace furnish::test {

/// Something that a visit of a generated salon found, told apart by a word of its own.
struct MadeFinding {
  std::string word;
  bool open = true;
};

/// A salon of one pet with its visits and bookings.
struct VisitedPet {
  std::map<std::string, std::string> files;  ///< by their paths in the salon's folder
  std::vector<Date> visits;                  ///< oldest first; may be empty
  std::optional<Date> booked;                ///< at the salon, for this pet, after the last visit
  bool uncut = false;                        ///< every part is only brushed, planned and done
  bool gentle = false;         ///< its handling rules every dryer out but quiet air or a towel
  bool reads_spanish = false;  ///< its owner
  std::vector<MadeFinding> findings;      ///< of all its visits
  std::vector<std::string> only_english;  ///< words for the owner that nobody translated
};

/// A pet as a salon knows it: none to four visits with measured lengths, mats, findings that are
/// open, seen again or closed, work done otherwise and words for the owner in one language or two;
/// a booking among those of other pets; a drawer that lacks tools; conditions and handling that
/// forbid dryers or shears. `last`: the latest day that the last visit may have.
VisitedPet visited_pet(Dice&, Date last);
}  // namespace furnish::test
