#pragma once

#include <cstdint>
#include <map>
#include <string>

#include "page/block.h"
#include "plan/day_plan.h"
#include "sheet/sheet.h"

namespace furnish {

/// How much a booking's row says of the trim: tools and lengths, or only where it is not the
/// style's. `close`: for a column; the text stands under hour, name and minutes, and has the looks.
enum class DayDetail : std::uint8_t { tools, places, close };

/// What a row says of a danger or a warning of the pet's own: all its words and what to do, or,
/// where room is short, its first sentence, with a mark if there is more.
enum class DayAlerts : std::uint8_t { whole, first };

/// In whose words a day is said, and what a desk of each of its pets is made of.
struct DayDesk {
  const Salon& salon;
  Date day;
  Paper paper;
  const SheetVoice& voice;
  std::map<std::string, std::string> names;  ///< of the pets that can be read, by their keys
  DayAlerts alerts = DayAlerts::whole;
  bool brief = false;       ///< colours are left to the card
  bool terse = false;       ///< a booking in two paragraphs: what can hurt, and all else
  bool bare_hours = false;  ///< in columns hours stand without "AM"
};

/// One booking: hour and name, what cannot go as it is booked, what can hurt, the trim, what is
/// new since last time; minutes and when it is collected. Boxes for here, done and collected.
/// `groomer`: said too, where the row may stand under another's name; may be empty.
BlockPtr day_row(const DayRow&, const DayDesk&, DayDetail, const std::string& groomer = {});
}  // namespace furnish
