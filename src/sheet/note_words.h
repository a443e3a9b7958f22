#pragma once

#include <string>
#include <vector>

#include "figure/figure.h"
#include "page/alerts.h"
#include "sheet/note.h"
#include "sheet/own_words.h"

namespace furnish {

/// A line of a row, and what stands under it in another language.
struct NoteLine {
  std::vector<TextSpan> spans;
  ApartText apart{};
};

/// What must not be missed: a mat round a limb, weight lost; on an owner's copy also the pet's
/// alerts. Gravest first.
std::vector<AlertEntry> note_alerts(const NoteDesk&);
/// What waits for a signature: what was agreed to without a name or a day, and what should have
/// been agreed to but is not on record.
std::vector<OwnLine> note_signatures(const NoteDesk&);
/// The dog as it came (dashed) and as it left, with the findings of `side`.
FigureInput note_figure(const NoteDesk&, Side side);
/// True if both sides are needed to show the findings.
bool note_needs_both_sides(const NoteDesk&);
/// "Grows 7 to 8 mm in 30 days: measured at 6 visits." Empty if nothing was measured.
std::string growth_learned(const NoteDesk&);
}  // namespace furnish
