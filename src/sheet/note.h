#pragma once

#include <optional>
#include <span>
#include <vector>

#include "page/photograph.h"
#include "sheet/sheet.h"

namespace furnish {

/// What a visit's note is made from, besides the pet and the plan as they stand after the visit
/// (`SheetInput::plan`, whose day is the visit's). The copy on file says all; the owner's says it
/// in plain words.
struct NoteInput {
  const Plan& before;  ///< of the same day, when the visit was still to come
  const Visit& visit;
  std::span<const Visit> history;  ///< up to this visit, it included; oldest first
  /// Of the visit, in its order; null where one is missing or broken. As many as it has photos.
  std::vector<PhotographPtr> photos{};
  std::optional<NextVisit> next{};  ///< as of the day of print, if this is the last visit
  Vet vet{};                        ///< the owner's, on the owner's copy
};

/// What a note is written from. What an owner may not know is not in the pet, plan and visits of an
/// owner's copy (model/for_everyone.h).
struct NoteDesk : SheetDesk {
  const NoteInput& note;
  /// In whose words: the file's copy, or the owner's, in plain ones.
  bool staff() const { return input.kind.reader == Audience::staff; }
};

/// One page: how it came in, what was done, how it left, what was found, what is learned from it.
/// Empty after an error.
std::optional<Sheet> make_note(const SheetDesk&, const NoteInput&, DiagnosticSink&);
}  // namespace furnish
