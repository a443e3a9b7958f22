#include "sheet/style_front.h"

#include <algorithm>
#include <utility>

#include "figure/true_size.h"
#include "page/around_corner.h"
#include "page/forms.h"
#include "page/list.h"
#include "page/picture.h"
#include "page/run_in_alerts.h"
#include "page/shortest.h"
#include "page/stack.h"
#include "sheet/alerts.h"
#include "sheet/card_alerts.h"
#include "sheet/due.h"
#include "sheet/pieces.h"
#include "sheet/style_table.h"
#include "sheet/style_words.h"
#include "sheet/terms.h"
#include "sheet/who.h"

namespace furnish {
namespace {
/// Between the figure and what stands beside it; and the least width of that.
constexpr Length figure_gutter = 5_mm, least_beside = 55_mm;
/// Takes what is left of a column, which so begins at its top.
constexpr int filler = 1000;
/// How much taller than its least the figure may grow with spare room.
constexpr double most_growth = 1.2;

BlockPtr as_rows(const std::vector<SheetRow>& all) {
  std::vector<LabelRow> rows;
  for (const SheetRow& row : all) {
    rows.push_back(label_row(row));
    if (row.text.empty() && !row.hand_lines.empty())
      rows.back().content = std::make_shared<BlankLine>();
  }
  return std::make_shared<Rows>(std::move(rows), std::make_shared<LabelColumn>());
}

/// Each with its label run in; a line to write on where a hand is to say it.
BlockPtr as_texts(const std::vector<SheetRow>& rows) {
  std::vector<BlockPtr> out;
  for (const SheetRow& row : rows) {
    if (!out.empty()) out.push_back(std::make_shared<Gap>(0.4, 0.1, 0));
    if (!row.text.empty() || row.hand_lines.empty()) {
      out.push_back(as_text(row, Face::semibold));
    } else {
      out.push_back(std::make_shared<BlankLine>(row.hand_lines.front()));
    }
  }
  return column(std::move(out));
}

void append(std::vector<SheetRow>& to, std::vector<SheetRow> more) {
  std::ranges::move(more, std::back_inserter(to));
}
}  // namespace

StyleFront::StyleFront(const std::vector<StyleRow>& rows, const SheetDesk& desk)
    : rows_(rows),
      desk_(desk),
      input_(desk.input),
      voice_(desk.voice),
      figure_(style_figure(rows, desk)),
      dog_(draw_dog(figure_)) {}

std::vector<BlockPtr> StyleFront::whole(FrontStyle style, Length portrait) const {
  const bool roomy = style == FrontStyle::open;
  std::vector<BlockPtr> blocks{
      with_portrait(who(roomy, std::make_shared<LabelColumn>(), portrait > Length{}), portrait)};
  blocks.push_back(gap(roomy ? 0.75 : 0.5));
  blocks.push_back(band(style));
  blocks.push_back(gap(roomy ? 0.75 : 0.4));
  const auto cautions =
      style == FrontStyle::signed_rows ? RowCautions::signal_words : RowCautions::in_full;
  // What has no room to spare stands as close as the rhythm lets it.
  const bool ample = roomy || style == FrontStyle::dense;
  const Length gutter = ample ? 4_mm : Length();
  blocks.push_back(style == FrontStyle::in_two ? style_table_in_two(rows_, desk_)
                                               : style_table(rows_, desk_, cautions, gutter));
  if (has_bars()) {
    blocks.push_back(gap(roomy ? 0.5 : 0.3));
    blocks.push_back(bars());
  }
  return blocks;
}

std::vector<BlockPtr> StyleFront::without_table(Length portrait) const {
  return {with_portrait(who(false, {}, portrait > Length{}), portrait), gap(0.5),
          band(FrontStyle::dense)};
}

std::vector<BlockPtr> StyleFront::table_in_two() const {
  std::vector<BlockPtr> out{style_table_in_two(rows_, desk_)};
  if (has_bars()) out.push_back(bars());
  return out;
}

std::vector<BlockPtr> StyleFront::table_in_pieces() const {
  std::vector<BlockPtr> out = style_table_in_pieces(rows_, desk_);
  if (has_bars()) out.push_back(bars());
  return out;
}

std::vector<BlockPtr> StyleFront::pieces() const {
  std::vector<BlockPtr> out = plain_head(input_.pet, style_facts(desk_));
  std::vector<AlertEntry> entries = alert_entries(desk_, CautionScope::all);
  if (entries.empty()) out.push_back(no_alerts_run_in(desk_, after_label));
  for (const AlertEntry& entry : entries) {
    for (AlertEntry& piece : cut(entry)) {
      out.push_back(std::make_shared<RunInAlerts>(std::vector{std::move(piece)}));
    }
  }
  out.push_back(figure(FrontStyle::dense));
  if (const BlockPtr block = looks(FrontStyle::open)) out.push_back(block);
  std::vector<SheetRow> notes = style_handling(desk_);
  append(notes, style_who(desk_));
  notes.push_back(due_row(desk_));
  for (const SheetRow& row : cut(notes)) out.push_back(as_text(row, Face::semibold));
  std::ranges::move(table_in_pieces(), std::back_inserter(out));
  return out;
}

/// The head and the alerts. `split`: the gravest alert by itself, so that a portrait need not stand
/// beside all of them; rows that are black go together.
std::vector<BlockPtr> StyleFront::who(bool roomy, const std::shared_ptr<LabelColumn>& labels,
                                      bool split) const {
  std::vector<BlockPtr> out{sheet_head(input_.pet, style_facts(desk_), 6_mm)};
  std::vector<AlertEntry> first = alert_entries(desk_, CautionScope::all), rest;
  if (first.empty()) {
    out.push_back(roomy ? no_alerts(desk_, labels) : no_alerts_run_in(desk_, after_label));
    return out;
  }
  if (split) {
    const auto black = [](const AlertEntry& entry) { return entry.gravity == Gravity::row; };
    const auto end = std::max(first.begin() + 1, std::ranges::find_if_not(first, black));
    std::move(end, first.end(), std::back_inserter(rest));
    first.erase(end, first.end());
  }
  const auto add = [&](std::vector<AlertEntry> entries, Length rule) {
    if (entries.empty()) return;
    if (roomy) {
      out.push_back(
          std::make_shared<Alerts>(std::move(entries), labels, Alerts::Actions::beside, rule));
    } else {
      out.push_back(std::make_shared<RunInAlerts>(std::move(entries), rule));
    }
  };
  add(std::move(first), rule_name);
  add(std::move(rest), {});
  return out;
}

/// One under the other, with the portrait in the corner if it is to have some height.
BlockPtr StyleFront::with_portrait(std::vector<BlockPtr> blocks, Length height) const {
  if (height == Length{}) return column(std::move(blocks));
  std::string says = input_.pet.name.value;
  for (const TextSpan& span : looks_text(desk_)) {
    says += (says == input_.pet.name.value ? colon(voice_.words) : "") + span.text;
  }
  constexpr double aspect = 4.0 / 3;
  const auto picture =
      std::make_shared<Picture>(input_.portrait, std::move(says), std::nullopt, aspect, height,
                                height, 0, Origin{"photo", input_.pet.photo_span});
  return std::make_shared<AroundCorner>(std::move(blocks), picture,
                                        Size{scaled(height, aspect), height}, Length::mm(5),
                                        Length::mm(1.5));
}

Length StyleFront::text_width() const {
  const Insets& margins = input_.kind.margins;
  return input_.paper.size.width - margins.left - margins.right;
}

/// Half of the page and a little: the dog with its numbers takes half of it.
Length StyleFront::figure_width(FrontStyle style) const {
  const bool ample = style == FrontStyle::open || style == FrontStyle::dense;
  return std::min(text_width(), scaled(input_.paper.size.width, ample ? 0.53 : 0.515));
}

BlockPtr StyleFront::figure(FrontStyle style) const {
  const Length height = height_of(dog_, figure_width(style));
  return dog_figure(figure_, dog_, height, scaled(height, most_growth), 1, {"figure", {}});
}

/// What the finished dog looks like, and what the marks say; null without a style or marks.
BlockPtr StyleFront::looks(FrontStyle style) const {
  std::vector<BlockPtr> out;
  if (const auto row = style_looks(desk_)) {
    out.push_back(heading(row->label, Role::heading, Face::bold));
    out.push_back(paragraph(row->text, {}, row->origin()));
  }
  const bool differs = std::ranges::any_of(rows_, [](const StyleRow& row) { return row.differs; });
  std::vector<BulletList::Item> marks;
  if (input_.pet.style && differs) {
    marks.push_back({paragraph(voice_.words.say(Phrase::differs_says)), Marker::diamond, true});
  }
  const bool covered = std::ranges::any_of(
      figure_.callouts, [&](const FigureCallout& one) { return points_at_covered(one, dog_); });
  // Where each line counts, a ring has to be understood by itself.
  if (covered && (style == FrontStyle::open || style == FrontStyle::dense)) {
    marks.push_back({paragraph(voice_.words.say(Phrase::covered_says)), Marker::ring, true});
  }
  if (!marks.empty()) out.push_back(std::make_shared<BulletList>(std::move(marks)));
  return out.empty() ? nullptr : column(std::move(out));
}

/// The figure with what to mind beside it. What has no room there stands under it, over the whole
/// width, if that takes less height.
BlockPtr StyleFront::band(FrontStyle style) const {
  std::vector<SheetRow> handling = style_handling(desk_), about = style_who(desk_);
  if (style == FrontStyle::lean)
    std::erase_if(about, [&](const SheetRow& row) { return !stays(row); });
  std::vector<SheetRow> all = handling;
  append(all, about);
  handling.push_back(due_row(desk_));
  all.push_back(due_row(desk_));
  return std::make_shared<Shortest>(
      std::vector{band(style, all, {}), band(style, handling, about), band(style, {}, all)});
}

bool StyleFront::stays(const SheetRow& row) const {
  return row.label == voice_.words.say(Phrase::who_health);
}

std::vector<SheetRow> StyleFront::left_out() const {
  std::vector<SheetRow> rows = style_who(desk_);
  std::erase_if(rows, [&](const SheetRow& row) { return stays(row); });
  return rows;
}

BlockPtr StyleFront::band(FrontStyle style, const std::vector<SheetRow>& beside,
                          const std::vector<SheetRow>& below) const {
  std::vector<BlockPtr> out, side;
  const bool roomy = style == FrontStyle::open;
  const Length width = figure_width(style);
  const bool stands_beside = text_width() - width - figure_gutter >= least_beside;
  if (const BlockPtr block = looks(style)) side.push_back(block);
  if (!beside.empty()) {
    if (!side.empty()) side.push_back(std::make_shared<Gap>(0.75, 0.3, 0));
    side.push_back(as_texts(beside));
  }
  if (stands_beside && !side.empty()) {
    side.push_back(std::make_shared<Gap>(0, 0, filler));
    std::vector<Beside::Cell> cells{{figure(style), width}, {column(std::move(side))}};
    out.push_back(std::make_shared<Beside>(std::move(cells), figure_gutter, Beside::Line::top));
  } else {
    out.push_back(figure(style));
    std::ranges::move(side, std::back_inserter(out));
  }
  if (!below.empty()) {
    out.push_back(gap(roomy ? 0.5 : 0.3));
    out.push_back(roomy ? as_rows(below) : as_texts(below));
  }
  return column(std::move(out));
}

bool StyleFront::has_bars() const {
  return std::ranges::any_of(rows_, [](const StyleRow& row) { return has_bar(row); });
}

BlockPtr StyleFront::bars() const {
  return true_size_bars({}, voice_.words.say(Phrase::print_note), {"true size", input_.pet.span});
}
}  // namespace furnish
