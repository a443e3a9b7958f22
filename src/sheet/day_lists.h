#pragma once

#include <string>
#include <vector>

#include "page/block.h"
#include "plan/day_plan.h"
#include "sheet/day_row.h"
#include "sheet/sheet.h"

namespace furnish {

/// A line of a list: what or whom it is about, and what there is to do.
struct DayLine {
  std::string head, text;
  std::string beware;  ///< "Not for Rex: lavender."; may be empty
};
/// What to mix, a line a product: "2 bottles, each 45 ml + 455 ml water; 870 ml for 4 pets."
std::vector<DayLine> mix_lines(const DayPlan&, const SheetVoice&);
/// "4 pets, expected 6 h 40 min, booked 8 h 45 min"; in a column "6 h 40 min of
/// 8 h 45 min", where all is known.
std::string day_sums(const DayBlock&, DayDetail, const SheetVoice&);
/// Which bookings are missing, for they cannot be read: "2 bookings of this day cannot be read:
/// line 4; rex, line 9." Empty if there are none.
std::string unread_text(const DayPlan&, const SheetVoice&);
/// Who is to be rung, "Rex, A. Owner", and why, as mix_lines().
std::vector<DayLine> call_lines(const DayPlan&, const Salon&, Date day, const SheetVoice&);

// What is done before the first pet comes: lists with boxes to tick, a line a block. Empty where
// there is nothing to do.

/// "Oat shampoo: 2 bottles, each 45 ml + 455 ml water; 870 ml for 4 pets."
std::vector<BlockPtr> mix_list(const DayPlan&, const SheetVoice&);
/// Who is to be rung, and why. The telephone only where the salon shows it on cards, for anyone who
/// comes in can read a wall; else where it is: in the pet's file.
std::vector<BlockPtr> call_list(const DayPlan&, const Salon&, Date day, const SheetVoice&);
}  // namespace furnish
