#pragma once

#include <optional>
#include <string>

#include "plan/home_care.h"
#include "sheet/sheet.h"

namespace furnish {

/// What a care sheet is made from, besides the pet and its plan.
struct CareInput {
  const HomeCare& care;
  const Visit* visit = nullptr;  ///< of today, if there was one
  std::string event_code{};      ///< the next visit as a calendar entry, for a code; empty: none
};

/// One page for the owner's fridge: what was done, how to keep the coat, what to watch for, when to
/// come back. pre: pet, plan and visit know nothing that is for staff (model/for_everyone.h). Empty
/// after an error.
std::optional<Sheet> make_care_sheet(const SheetInput&, const CareInput&, const SheetVoice&,
                                     DiagnosticSink&);

/// What a calendar entry of the next visit says: "Marlow: grooming at Lantern Street Dogs".
std::string visit_summary(const SheetInput&, const SheetVoice&);
/// Why that day, and how to reach the salon; a line each.
std::string visit_description(const SheetInput&, const SheetVoice&);
}  // namespace furnish
