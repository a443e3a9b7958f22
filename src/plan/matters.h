#pragma once

#include <span>
#include <string>
#include <vector>

#include "plan/cautions.h"

namespace furnish {

/// What is the matter, and what to do about it; a reader must not take the one for another's.
struct Advice {
  std::vector<CautionText> what;  ///< never empty
  CautionText instead;
};

/// Cautions that concern one place, one product, or the drying: a page says them in one row.
struct Matter {
  std::vector<Caution> cautions;     ///< gravest first; never empty
  std::vector<CautionText> what;     ///< of all, each once
  std::vector<CautionText> instead;  ///< what to do, without advice that the gravest takes back
  std::vector<Advice> advice;        ///< the same, each hazard with what is to be done about it
  Signal gravest() const { return cautions.front().signal; }
};

/// In the order of what is gravest in each. Places are one matter where all that one caution names
/// lie within what another names.
std::vector<Matter> matters(std::span<const Caution>);
}  // namespace furnish
