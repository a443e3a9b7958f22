#pragma once

#include <string>
#include <vector>

#include "page/alerts.h"
#include "sheet/care.h"
#include "sheet/own_words.h"
#include "sheet/parts.h"

namespace furnish {

/// What a care sheet is written from.
struct CareDesk : SheetDesk {
  const CareInput& care;
};

/// The pet's alerts, gravest first.
std::vector<AlertEntry> care_alerts(const CareDesk&);

/// Three to five points are read (a hospital's plain-language checklist).
inline constexpr std::size_t most_points = 5;
/// So many names an owner still reads; more of them are "most of the coat", or "all the rest".
inline constexpr std::size_t most_names = 4;

/// What was done as the visit has it, else what is planned; up to five points in an owner's words.
std::vector<OwnLine> care_today(const CareDesk&);

/// Rows of "at home": what, and what to do about it.
std::vector<SheetRow> care_at_home(const CareDesk&);

/// What to look out for, and what to do then.
struct CareSign {
  std::string sign, action;
  ApartText apart{};
};
/// What was found on the pet first, then what may come.
std::vector<CareSign> care_watch(const CareDesk&);

/// Why the pet is due on that day; empty if there is no day.
std::string care_reason(const SheetDesk&);
/// What the coat passes before that day, and what to do about it; empty if nothing.
std::string care_advice(const SheetDesk&);
/// Phone, email and address of the salon, in that order; what is not known is left out.
std::vector<std::string> care_contact(const Salon&);
}  // namespace furnish
