#pragma once

#include <string>
#include <vector>

#include "figure/figure.h"
#include "page/alerts.h"
#include "page/paragraph.h"
#include "page/table.h"
#include "sheet/sheet.h"

namespace furnish {

/// What happens to the places of a row.
enum class RowKind : std::uint8_t { no_tool, brush, cut };

/// A row of the style sheet's table, which is the order of work: places with the same work, done
/// while one tool is in hand, that leave the same length.
struct StyleRow {
  int number = 0;
  RowKind kind = RowKind::cut;
  std::vector<Place> places;
  std::string names;                     ///< "chest", "body", "hocks and left ear"
  const TrimPart* part = nullptr;        ///< of the first place; null where no tool may touch
  std::string tool;                      ///< in hand, said once a group
  std::optional<ToolKind> kind_of_tool;  ///< how the figure hatches it
  bool opens_group = false;
  bool differs = false;
  std::optional<LengthRange> left;
  bool natural = false;  ///< brushed: the coat's own length
  std::string stance;    ///< "from behind", where all places are worked so
  std::string finish;    ///< of ears, tail or feet
  std::string instead;   ///< what the drawer lacks, and the difference
  std::string id() const { return "row-" + std::to_string(number); }
};
/// First what no tool may touch, then what is only brushed, then tool by tool as the plan has it.
std::vector<StyleRow> style_rows(const SheetInput&, const SheetVoice&);

/// The table: number, tool, part and how, what is left in both systems of units, and its bar at
/// true size. `with_how` adds the lines for a newer groomer. The last rows are blends, finish and
/// the check of the line.
enum class WithHow : bool { no, yes };
BlockPtr style_table(const std::vector<StyleRow>&, const SheetInput&, const SheetVoice&, WithHow);
/// The same rows in two columns, each tool over its rows; for a trim of many short rows. Without
/// what follows the last cut.
BlockPtr style_table_in_two(const std::vector<StyleRow>&, const SheetInput&, const SheetVoice&);

/// The dog that wears the trim, numbered like the rows.
FigureInput style_figure(const std::vector<StyleRow>&, const SheetInput&, const SheetVoice&);

/// Label and text of one of the sheet's notes.
struct StyleNote {
  std::string label;
  std::vector<TextSpan> text;
  SourceSpan span;
};
/// What comes before the first cut: look over, brush out, bath, nails, drying.
std::vector<StyleNote> style_before(const SheetInput&, const SheetVoice&, WithHow);
/// Blends, extras and the check of the line, which follow the last cut.
std::vector<StyleNote> style_after(const SheetInput&, const SheetVoice&);

/// All alerts and cautions, gravest first; accepted ones say so.
std::vector<AlertEntry> style_alerts(const SheetInput&, const SheetVoice&);
/// Who it is, in two lines: "Spitz cross, orange sable · double coat" and "male, neutered · 5 years
/// · 4.6 kg · Natural tidy".
std::vector<std::vector<TextSpan>> style_facts(const SheetInput&, const SheetVoice&);
/// Health and the owner's wishes, in the owner's words.
std::vector<StyleNote> style_who(const SheetInput&, const SheetVoice&);
/// What to do when it does not go as planned, and whom to ask. `own`: only what this pet, its coat
/// and its plan give reason for; `general` adds what holds for every dog.
enum class WhatIf : std::uint8_t { own, general };
std::vector<StyleNote> style_what_if(const SheetInput&, const SheetVoice&, WhatIf);
/// Two or three questions whose answers stand on the page.
std::vector<std::string> style_questions(const std::vector<StyleRow>&, const SheetInput&,
                                         const SheetVoice&);
}  // namespace furnish
