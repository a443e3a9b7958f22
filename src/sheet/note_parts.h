#pragma once

#include <string>
#include <vector>

#include "figure/figure.h"
#include "page/alerts.h"
#include "page/paragraph.h"
#include "sheet/note.h"

namespace furnish {

/// What a note is written from.
struct NoteDesk {
  const SheetInput& input;
  const NoteInput& note;
  const SheetVoice& voice;
  bool staff() const { return note.audience == Audience::staff; }
};

/// One row of the note: a label, what it says, or points under each other.
struct NoteRow {
  std::string label;
  std::vector<std::vector<TextSpan>> lines;
  SourceSpan span;
};
/// How it came in, what was done, how it left, findings, products, what was told and agreed, when
/// it comes again. What nobody said takes no row.
std::vector<NoteRow> note_rows(const NoteDesk&);

/// The visit's findings, in the order of the file; their numbers are those on the figure.
std::vector<const Finding*> note_findings(const NoteDesk&);
/// What must not be missed: a mat round a limb, weight lost; on an owner's copy also the pet's
/// alerts. Gravest first.
std::vector<AlertEntry> note_alerts(const NoteDesk&);
/// What waits for a signature: what was agreed to without a name or a day, and what should have been
/// agreed to but is not on record.
std::vector<std::string> note_signatures(const NoteDesk&);
/// The dog as it came (dashed) and as it left, with the findings of `side`.
FigureInput note_figure(const NoteDesk&, Side side);
/// True if both sides are needed to show the findings.
bool note_needs_both_sides(const NoteDesk&);
/// "Grows 7 to 8 mm in 30 days: measured at 6 visits." Empty if nothing was measured.
std::string growth_learned(const NoteDesk&);
}  // namespace furnish
