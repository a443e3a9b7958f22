#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "app/console.h"
#include "app/desk_shop.h"
#include "app/options.h"
#include "app/workshop.h"
#include "plan/day_plan.h"
#include "sheet/sheet.h"

namespace furnish {

/// A salon's day with all that is worked out for its pets. What is said of them goes to the run.
struct DayCases {
  std::map<std::string, Case> cases;   ///< by key; those that can be read
  std::map<std::string, Case> faulty;  ///< by key; what can be read of others, see rest_of()
  std::vector<DayWarning> warnings;
  bool listed = true;    ///< false: the salon's pets cannot even be listed
  bool complete = true;  ///< false: a pet that is booked, or a visit of one, cannot be read

  /// Points into this and the day.
  DayPlan plan(const Day&) const;

 private:
  friend DayCases day_cases(Workshop&, SalonFolder&, const Day&);
  /// Their folder is this one's.
  std::shared_ptr<OverlaidFiles> over_;
  std::shared_ptr<Workshop> spare_;
  mutable std::map<std::string, DayPet> pets_;
};
/// Reads and plans the pets that a day books, each once; what is said of them goes to the workshop,
/// and a person is told once of a pet that several days book.
DayCases day_cases(Workshop&, SalonFolder&, const Day&);

/// The sheet of a salon's day, which is the workshop's. A pet that cannot be read, or a visit of
/// one, has a row that says so, with what can hurt as far as that can be read, and `complete` is
/// false. Empty iff an error was reported. `cases`, if any, gets what was worked out.
std::optional<Sheet> day_sheet(Workshop&, SalonFolder&, bool& complete, DayCases* cases = nullptr);
/// `furnish day`.
Exit print_day(const Options&, Workshop&, Console&);
}  // namespace furnish
