#pragma once

#include <optional>
#include <string>
#include <vector>

#include "model/free_text.h"
#include "model/trim.h"
#include "trade/finish.h"

namespace furnish {

/// How ears, tail, feet and nails end, in the trade's words or free ones.
struct Finish {
  std::optional<FreeText> ears, tail, feet, nails, extras;
};

struct FinishLine {
  FinishPart part{};
  FreeText words;
  SaidBy said_by = SaidBy::style;
  SourceSpan span;
  bool differs = false;  ///< the pet says other than the style does
};

/// What the pet says over what the style says, in the order of the parts.
std::vector<FinishLine> resolve_finish(const Finish& style, const Finish& pet);
/// What is said of a part; null if nothing.
const FinishLine* find_line(const std::vector<FinishLine>&, FinishPart);
/// Part by part, the upper one where it says anything.
Finish overlay(const Finish& lower, const Finish& upper);
}  // namespace furnish
