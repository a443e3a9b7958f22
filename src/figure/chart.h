#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/date.h"
#include "page/block.h"

namespace furnish {

/// One value of a chart, with the words for it: the chart itself knows no language and no unit.
struct ChartPoint {
  Date day;
  double value = 0;           ///< finite
  std::string label, date{};  ///< "4.6 kg", "9 Jun 2026"
  bool after = false;         ///< what its day's work left: an open dot, a lighter number
};

struct ChartInput {
  std::vector<ChartPoint> points;  ///< by day; at least one
  /// A value to hold the others against, as a dashed line, and its words at the line's end.
  std::optional<double> reference{};
  std::string reference_label{};
  std::string alt{};  ///< what is shown: "Weight"; labels and dates are added
  /// With a day: each value held from the day of the one before, the first from this day, and is
  /// drawn as a step over that time from zero up. Else the values are joined by a line.
  std::optional<Date> steps_from{};
};

/// Values over time as wide as the column: dots at true distances in time, their numbers beside
/// them, dates under the axis. The first, the last, the lowest and the highest value have their
/// numbers always, the others where there is room; so have the first and the last date. No two
/// texts overlap. The height of the scale is a fifth of the largest value at least, so that a small
/// change looks small.
BlockPtr line_chart(ChartInput, Length height, Origin = {});
}  // namespace furnish
