#pragma once

#include <string>
#include <vector>

#include "figure/figure.h"
#include "figure/true_size.h"
#include "page/alerts.h"
#include "page/paragraph.h"
#include "page/table.h"
#include "sheet/sheet.h"
#include "sheet/trim_lines.h"

namespace furnish {

/// A row of the style sheet's table: places with the same work that leaves the same length.
struct StyleRow {
  int number = 0;
  TrimLine line;
  std::optional<LengthRange> left;
  bool natural = false;  ///< brushed: the coat's own length
  std::string finish;    ///< of ears, tail or feet
  std::string instead;   ///< what the drawer has for it, and the difference
  std::string id() const { return "row-" + std::to_string(number); }
};
std::vector<StyleRow> style_rows(const SheetInput&, const SheetVoice&);

/// The table's cells: number, part, tool and how, what it leaves in both systems of units.
enum class Leaves : std::uint8_t { two_lines, one_line };
std::vector<TableColumn> style_columns(const SheetVoice&);
std::vector<TableRow> style_table(const std::vector<StyleRow>&, const SheetInput&,
                                  const SheetVoice&, Leaves);
/// The dog that wears the trim, numbered like the rows.
FigureInput style_figure(const std::vector<StyleRow>&, const SheetInput&, const SheetVoice&);
/// Each distinct length once, short to long, with the rows that have it.
std::vector<TrueSizeBar> style_bars(const std::vector<StyleRow>&, const SheetVoice&);

/// All alerts and cautions, gravest first; accepted ones say so.
std::vector<AlertEntry> style_alerts(const SheetInput&, const SheetVoice&);
/// One line a tool: what is done with it, in order. The lines for a newer groomer follow where
/// there is room for them.
enum class WithHow : bool { no, yes };
std::vector<std::vector<TextSpan>> style_steps(const std::vector<StyleRow>&, const SheetInput&,
                                               const SheetVoice&, WithHow);
/// Label and text: bath, drying, blends, finish.
struct StyleNote {
  std::string label;
  std::vector<TextSpan> text;
  SourceSpan span;
};
std::vector<StyleNote> style_who(const SheetInput&, const SheetVoice&);
std::vector<StyleNote> style_notes(const SheetInput&, const SheetVoice&);
/// What to do when it does not go as planned, and whom to ask. `own`: only what this pet, its coat
/// and its plan give reason for; `general` adds what holds for every dog.
enum class WhatIf : std::uint8_t { own, general };
std::vector<StyleNote> style_what_if(const SheetInput&, const SheetVoice&, WhatIf);
/// Two or three questions whose answers stand on the page.
std::vector<std::string> style_questions(const std::vector<StyleRow>&, const SheetInput&,
                                         const SheetVoice&);
}  // namespace furnish
