#include "sheet/style_back.h"

#include <algorithm>
#include <array>
#include <utility>

#include "page/forms.h"
#include "page/list.h"
#include "page/shortest.h"
#include "page/stack.h"
#include "sheet/pieces.h"
#include "sheet/style_words.h"
#include "sheet/terms.h"
#include "sheet/vaccinations.h"

namespace furnish {
namespace {
/// Modules of half a millimetre are read from a poor print; of 0.43, from one of 150 dots an inch,
/// where the paper has no room for more.
constexpr Length good_module = 0.5_mm, least_module = Length::micrometres(430);
constexpr std::array code_sides{40_mm, 48_mm, 56_mm, 64_mm, 72_mm, 80_mm, 93_mm};
constexpr Length column_gutter = 8_mm;

/// Between two entries of a section.
BlockPtr between() {
  return std::make_shared<Gap>(0.4, 0.15, 0);
}

BlockPtr texts(const std::vector<SheetRow>& rows, std::string_view after) {
  std::vector<BlockPtr> out;
  for (const SheetRow& row : rows) {
    if (!out.empty()) out.push_back(between());
    out.push_back(as_text(row, Face::semibold, after));
  }
  return column(std::move(out));
}

/// Each point of a row on a line of its own under the row's label.
BlockPtr with_points(const SheetRow& row) {
  if (row.points.size() < 2) return as_text(row, Face::semibold);
  SheetRow first = row;
  first.points.clear();
  std::vector<BulletList::Item> lines;
  if (!row.text.empty() || row.points.empty()) {
    lines.push_back({as_text(first, Face::semibold), Marker::none});
  } else {
    if (!row.label.empty()) {
      lines.push_back({paragraph({{row.label, Face::semibold}}), Marker::none});
    }
  }
  for (const SheetRow::Point& point : row.points) {
    lines.push_back({paragraph(point.text), Marker::none});
  }
  return std::make_shared<BulletList>(std::move(lines));
}

BlockPtr pair_list(std::span<const std::string> pairs) {
  std::vector<BulletList::Item> items;
  for (const std::string& pair : pairs) items.push_back({paragraph(pair), Marker::dot});
  return std::make_shared<BulletList>(std::move(items));
}

/// Sections under each other in two columns, both from the top; null ones are left out.
BlockPtr in_columns(const std::vector<BlockPtr>& left, const std::vector<BlockPtr>& right) {
  const auto stacked = [](const std::vector<BlockPtr>& sections) {
    std::vector<BlockPtr> out;
    for (const BlockPtr& section : sections) {
      if (section == nullptr) continue;
      if (!out.empty()) out.push_back(std::make_shared<Gap>(1, 0.5, 0));
      out.push_back(section);
    }
    out.push_back(std::make_shared<Gap>(0, 0, 1));
    return column(std::move(out));
  };
  std::vector<Beside::Cell> cells{{stacked(left)}, {stacked(right)}};
  return std::make_shared<Beside>(std::move(cells), column_gutter, Beside::Line::top);
}
}  // namespace

StyleBack::StyleBack(const std::vector<StyleRow>& rows, const SheetDesk& desk)
    : rows_(rows),
      desk_(desk),
      input_(desk.input),
      voice_(desk.voice),
      blends_(style_blends(desk)) {
  if (input_.trim_code.empty()) return;
  DiagnosticSink unheard;  // report() tells it once
  for (const Length module : {good_module, least_module}) {
    for (const Length side : code_sides) {
      if (side > most_side()) break;
      code_ = large_qr_code(input_.trim_code, side, unheard, input_.pet.span, module);
      side_ = side;
      if (code_) return;
    }
  }
}

Length StyleBack::most_side() const {
  const Insets& margins = input_.kind.margins;
  return input_.paper.size.width - margins.left - margins.right;
}

std::vector<SheetRow> StyleBack::order(WithHow how) const {
  std::vector<SheetRow> rows = style_order(rows_, desk_, how);
  rows.push_back(style_last(desk_));
  return rows;
}

BlockPtr StyleBack::work(WithHow how) const {
  std::vector<BlockPtr> out;
  for (const SheetRow& row : order(how)) {
    if (!out.empty()) out.push_back(between());
    out.push_back(with_points(row));
  }
  return section(voice_.words.say(Phrase::head_order), column(std::move(out)));
}

BlockPtr StyleBack::blends() const {
  return blends_.blends.empty() ? nullptr : section(blends_.head, pair_list(blends_.blends));
}

BlockPtr StyleBack::what_if() const {
  return section(voice_.words.say(Phrase::head_what_if),
                 texts(style_what_if(desk_), colon(voice_.words)));
}

BlockPtr StyleBack::visits(WithHow how) const {
  const std::vector<SheetRow> rows = style_visits(desk_);
  std::vector<BlockPtr> out;
  if (!rows.empty()) {
    out.push_back(section(voice_.words.say(Phrase::head_visits), texts(rows, "")));
  }
  auto shots = how == WithHow::yes ? vaccinations_row(desk_) : std::nullopt;
  if (shots) {
    if (!out.empty()) out.push_back(std::make_shared<Gap>(1, 0.5, 0));
    const std::string head = std::exchange(shots->label, {});
    out.push_back(section(head, with_points(*shots)));
  }
  return out.empty() ? nullptr : column(std::move(out));
}

BlockPtr StyleBack::read_back() const {
  std::vector<BlockPtr> out;
  for (BlockPtr& answer : answers()) {
    out.push_back(std::move(answer));
    out.push_back(between());
  }
  out.push_back(signing());
  return section(voice_.words.say(Phrase::head_read_back), column(std::move(out)));
}

std::vector<BlockPtr> StyleBack::columns(WithHow how) const {
  const BlockPtr work = this->work(how), blend = blends(), what = what_if(), last = visits(how),
                 back = read_back(), code = code_ ? this->code() : nullptr;
  return {std::make_shared<Shortest>(std::vector{
      in_columns({work}, {blend, what, last, back, code}),
      in_columns({work, blend}, {what, last, back, code}),
      in_columns({work, last}, {blend, what, back, code}),
      in_columns({work, blend, last}, {what, back, code}),
  })};
}

std::vector<BlockPtr> StyleBack::whole(WithHow how, const std::vector<SheetRow>& left_out) const {
  const BlockPtr work = this->work(how), blend = blends(), what = what_if(), last = visits(how);
  std::vector<BlockPtr> out;
  if (!left_out.empty()) out = {texts(left_out, after_label), gap(0.75)};
  out.push_back(std::make_shared<Shortest>(std::vector{
      in_columns({work}, {blend, what, last}),
      in_columns({work, last}, {blend, what}),
      in_columns({work, blend}, {what, last}),
  }));
  out.push_back(gap(1));
  if (code_) {
    std::vector<Beside::Cell> cells{{read_back()}, {code(), side_}};
    out.push_back(std::make_shared<Beside>(std::move(cells), column_gutter, Beside::Line::top));
  } else {
    out.push_back(read_back());
  }
  return out;
}

std::vector<BlockPtr> StyleBack::pieces(const std::vector<SheetRow>& left_out) const {
  const Words& words = voice_.words;
  std::vector<BlockPtr> out;
  for (const SheetRow& row : cut(left_out)) out.push_back(as_text(row, Face::semibold));
  std::string head = words.say(Phrase::head_order);
  const auto add = [&](BlockPtr block) {
    if (!head.empty()) {
      block = section(std::exchange(head, {}), std::move(block));
      if (!out.empty()) block = column({std::make_shared<Gap>(0.6, 0.4, 0), std::move(block)});
    }
    out.push_back(std::move(block));
  };
  for (const SheetRow& row : cut(order(WithHow::no))) add(as_text(row, Face::semibold));
  head = blends_.blends.empty() ? std::string() : blends_.head;
  const std::span pairs(blends_.blends);
  for (std::size_t i = 0; i < pairs.size(); ++i) add(pair_list(pairs.subspan(i, 1)));
  head = words.say(Phrase::head_what_if);
  for (const SheetRow& row : cut(style_what_if(desk_)))
    add(as_text(row, Face::semibold, colon(voice_.words)));
  const auto visits = cut(style_visits(desk_));
  head = visits.empty() ? std::string() : words.say(Phrase::head_visits);
  for (const SheetRow& row : visits) add(as_text(row, Face::semibold));
  if (const auto shots = vaccinations_row(desk_)) {
    head.clear();
    for (const SheetRow& row : cut({*shots})) add(as_text(row, Face::semibold));
  }
  head = words.say(Phrase::head_read_back);
  for (const BlockPtr& block : answers()) add(block);
  add(signing());
  if (code_) out.push_back(code());
  return out;
}

void StyleBack::report(DiagnosticSink& sink) const {
  if (input_.trim_code.empty() || code_) return;
  qr_code(input_.trim_code, std::min(code_sides.back(), most_side()), sink, input_.pet.span,
          least_module);
}

/// A head, a rule, and what belongs to it.
BlockPtr StyleBack::section(const std::string& head, BlockPtr content) const {
  return column({heading(head, Role::heading, Face::bold), std::make_shared<Gap>(0.1, 0.1, 0),
                 std::make_shared<Rule>(rule_head), std::make_shared<Gap>(0.3, 0.2, 0),
                 std::move(content)});
}

/// The code with what to do with it under it.
BlockPtr StyleBack::code() const {
  return column({qr_block(*code_, side_, voice_.words.say(Phrase::code_says)),
                 paragraph(voice_.words.say(Phrase::code_how), TextStyle{Role::label})});
}

/// A question in bold and under it what should be said.
std::vector<BlockPtr> StyleBack::answers() const {
  std::vector<BlockPtr> out;
  for (const ReadBack& one : style_read_back(rows_, desk_)) {
    SheetRow row{one.question, one.answer, input_.pet.span};
    for (SheetRow& piece : cut({std::move(row)})) {
      out.push_back(as_text(piece, Face::semibold, "\u2007"));
    }
  }
  return out;
}

BlockPtr StyleBack::signing() const {
  const auto line = [&](Phrase label) {
    return std::make_shared<BlankLine>(voice_.words.say(label));
  };
  return column({line(Phrase::answered_by), line(Phrase::heard_by), line(Phrase::signed_on)});
}
}  // namespace furnish
