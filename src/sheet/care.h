#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "plan/home_care.h"
#include "sheet/sheet.h"

namespace furnish {

/// What a care sheet says was done.
enum class CareAbout : std::uint8_t {
  today,    ///< of the visit of the sheet's day
  earlier,  ///< of a visit before the day of print
  planned,  ///< is only planned: booked, and nothing recorded yet
  nothing   ///< was never here, and is not today
};

/// What a care sheet is made from, besides the pet and its plan.
struct CareInput {
  const HomeCare& care;
  const Visit* visit = nullptr;  ///< that the sheet is of; null where it is of none
  std::string event_code{};      ///< the next visit as a calendar entry, for a code; empty: none
  CareAbout about = CareAbout::planned;
  Vet vet{};          ///< the owner's, as this owner's page may say it
  bool copy = false;  ///< as the page was on an earlier day, which is not called today
};

/// One page for the owner's fridge: what was done, how to keep the coat, what to watch for, when to
/// come back. pre: pet, plan and visit know nothing that is for staff (model/for_everyone.h). Empty
/// after an error.
std::optional<Sheet> make_care_sheet(const SheetDesk&, const CareInput&, DiagnosticSink&);
}  // namespace furnish
