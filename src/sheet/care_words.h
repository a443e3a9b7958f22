#pragma once

#include <optional>
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

/// How the coat is kept at home: one routine, of at most two rhythms.
struct CareRoutine {
  /// What is brushed at one rhythm, as a sentence: "Every day: ears and tail."
  struct Rhythm {
    HowOften often = HowOften::weekly;
    std::string text;
  };
  std::vector<Rhythm> rhythms;  ///< most often first; at least one
  std::string later;            ///< what changes, and on which day; empty if nothing does
  std::string way;              ///< with what, and how
  std::string mats;  ///< where they begin and what to do then; empty for coats that do not mat
};
/// Empty where no brush goes anywhere, or nothing is known of the coat.
std::optional<CareRoutine> care_routine(const CareDesk&);
/// The same as rows, for a page without a picture of it.
std::vector<SheetRow> routine_rows(const CareRoutine&, const CareDesk&);
/// "every day".
std::string often_text(HowOften, const Words&);

/// The other rows of "at home": what, and what to do about it.
std::vector<SheetRow> care_at_home(const CareDesk&);

/// What to look out for, and what to do then.
struct CareSign {
  std::string sign, action;
  ApartText apart{};
};
/// What was found on the pet first, then what may come.
std::vector<CareSign> care_watch(const CareDesk&);

/// True if the next day is booked or was agreed; else it is about then, and to be booked.
bool is_settled(const SheetDesk&);
/// Why the pet is due on that day, and that it is to be booked; empty if there is no day.
std::string care_reason(const SheetDesk&);
/// Which of the owner's own limits the coat passes before that day, and what to do about it; empty
/// if none. That it will mat is part of the routine.
std::string care_advice(const SheetDesk&);
/// "Your vet: M. Okoye · 555 0199"; empty if nobody is named.
std::string vet_text(const Vet&, const Words&);
/// Phone, email and address of the salon, in that order; what is not known is left out.
std::vector<std::string> care_contact(const Salon&);
}  // namespace furnish
