#pragma once

#include <string>
#include <vector>

#include "page/alerts.h"
#include "page/paragraph.h"
#include "sheet/care.h"

namespace furnish {

/// What a care sheet is written from.
struct CareDesk {
  const SheetInput& input;
  const CareInput& care;
  const SheetVoice& voice;
};

/// The pet's alerts, gravest first.
std::vector<AlertEntry> care_alerts(const CareDesk&);

/// What was done, three to five points in an owner's words.
std::vector<std::string> care_today(const CareDesk&);

/// A row of "at home": what, and what to do about it. `strong` begins the text.
struct CareRow {
  std::string label, strong, text;
  SourceSpan span{};
};
std::vector<CareRow> care_at_home(const CareDesk&);

/// What to look out for, and what to do then.
struct CareSign {
  std::string sign, action;
};
/// What was found on the pet first, then what may come.
std::vector<CareSign> care_watch(const CareDesk&);

/// Why the pet is due on that day; empty if there is no day.
std::string care_reason(const SheetInput&, const SheetVoice&);
/// Phone, email and address of the salon, in that order; what is not known is left out.
std::vector<std::string> care_contact(const Salon&);
}  // namespace furnish
