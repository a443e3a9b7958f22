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

/// What was done, three to five points in an owner's words.
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
/// Phone, email and address of the salon, in that order; what is not known is left out.
std::vector<std::string> care_contact(const Salon&);
}  // namespace furnish
