#pragma once

#include <string>
#include <vector>

#include "base/length.h"
#include "page/block.h"

namespace furnish {

/// One distinct length of the plan.
struct TrueSizeBar {
  LengthRange left;
  std::string label;  ///< "13–25 mm hocks"
};

/// Bars at 1:1 to hold against the coat, solid up to the low end and hatched to the high one, each
/// with its label to the right or, where there is no room, under it; then a 50 mm rule with the
/// line `print_note` ("Print at 100 %: this rule is 50 mm"), both left out where the note is empty.
/// Lengths of marks are exact to the micrometre. A bar wider than the column is left out; its label
/// says the length all the same.
BlockPtr true_size_bars(std::vector<TrueSizeBar>, std::string print_note, Origin = {});
}  // namespace furnish
