#pragma once

#include <array>
#include <chrono>
#include <string>
#include <vector>

#include "base/date.h"
#include "page/block.h"

namespace furnish {

/// What is done on a day until the next visit. The visit itself is the strip's last day.
struct StripDay {
  Date day;
  bool daily = false;  ///< what is brushed every day is brushed
  bool brush = false;  ///< so is what is brushed less often
  bool nails = false, tidy = false;
};

struct StripWords {
  /// Sunday first, as std::chrono counts them: "Mon", and "M" for where that has no room.
  std::array<std::string, 7> weekdays, narrow_weekdays;
  std::array<std::string, 12> months;  ///< "Nov"
  /// The legend; a mark that is on no day, or has no word, is left out of it.
  std::string today, daily, brush, nails, tidy, visit;
};

struct StripInput {
  Date today, visit;  ///< both are on it; pre: today <= visit
  std::chrono::weekday first_weekday = std::chrono::Monday;
  std::vector<StripDay> days;  ///< those with marks, in any order; others are passed over
  StripWords words;
  std::string alt;            ///< all of it in words
  std::size_t most_rows = 5;  ///< of a single column
};

/// More week rows than these are not drawn: the last of them then is the visit's, after a dotted
/// line that stands for the weeks left out.
inline constexpr int most_strip_weeks = 27;

/// The days from today to the next visit, a row a week under the weekdays, in one column up to
/// `most_rows`, in two up to twelve, else in three; fewer where the width does not do. Today is
/// outlined, the visit a black square with a white number; brushing has the signs of a figure that
/// is shaded by how often its parts are brushed (Shade::dark for every day, else Shade::middle),
/// nails a triangle, a tidy a diamond, told apart by shape alone. A thin line runs between months,
/// whose names stand at the row that holds their first day. The legend is below, or beside a single
/// column.
BlockPtr calendar_strip(StripInput, Origin = {});
}  // namespace furnish
