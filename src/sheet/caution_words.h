#pragma once

#include <string>

#include "base/measures.h"
#include "plan/plan_words.h"
#include "sheet/sheet.h"

namespace furnish {

/// What a caution says, or what it advises; no full stop. Dates, masses and times are the reader's.
std::string caution_text(const CautionText&, const SheetVoice&);

/// What a plan says at a terminal, in these words: days as ISO 8601, numbers as in English, masses
/// in `units`. Keeps the reference.
PlanWords plan_words(const Words&, Units units);
}  // namespace furnish
