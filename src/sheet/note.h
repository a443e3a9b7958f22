#pragma once

#include <optional>
#include <span>
#include <vector>

#include "model/audience.h"
#include "page/photograph.h"
#include "sheet/sheet.h"

namespace furnish {

/// What a visit's note is made from, besides the pet and the plan as they stand after the visit
/// (`SheetInput::plan`, whose day is the visit's).
struct NoteInput {
  const Plan& before;  ///< of the same day, when the visit was still to come
  const Visit& visit;
  std::span<const Visit> history;  ///< up to this visit, it included; oldest first
  /// Of the visit, in its order; null where one is missing or broken. As many as it has photos.
  std::vector<PhotographPtr> photos;
  /// In whose words: `staff` is the file's copy, `everyone` the owner's, in plain ones. What an
  /// owner may not know is not in the pet, plan and visits of that copy (model/for_everyone.h).
  Audience audience = Audience::staff;
};

/// One page: how it came in, what was done, how it left, what was found, what is learned from it.
/// Empty after an error.
std::optional<Sheet> make_note(const SheetInput&, const NoteInput&, const SheetVoice&,
                               DiagnosticSink&);
}  // namespace furnish
