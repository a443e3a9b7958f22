#include "sheet/style_table.h"

#include <algorithm>
#include <span>

#include "base/text.h"
#include "figure/hatching.h"
#include "page/shortest.h"
#include "page/stack.h"
#include "page/table.h"
#include "sheet/caution_words.h"
#include "sheet/shown.h"
#include "sheet/terms.h"
#include "sheet/trim_lines.h"
#include "trade/finish.h"
#include "trade/method.h"

namespace furnish {
namespace {
std::string both_units(LengthRange left, const SheetVoice& voice) {
  const Units first = voice.locale.units();
  const Units second = first == Units::metric ? Units::us : Units::metric;
  return shown(left, first, voice) + "\u00A0· " + shown(left, second, voice);
}

std::string leaves(const StyleRow& row, const SheetVoice& voice) {
  if (row.kind == RowKind::no_tool) return voice.words.say(Phrase::leaves_alone);
  if (row.natural) return voice.words.say(Phrase::leaves_natural);
  if (row.left) return both_units(*row.left, voice);
  return voice.words.say(Phrase::leaves_unknown);
}

std::string finish_of_row(const StyleRow& row, const Words& words) {
  const auto part = finish_part(row.part->place.region);
  return part ? finish_text(*part, row.finish, words) : words.written(row.finish);
}

/// "round, level with the cheeks; from behind; no ⅜ in comb (same length)".
std::vector<std::string> how_of(const StyleRow& row, const SheetVoice& voice) {
  std::vector<std::string> how;
  if (row.part == nullptr) return how;
  const TrimEntry& entry = row.part->entry;
  if (row.wash_first) how.push_back(how_text(Method::wash_first, voice.words));
  if (!row.finish.empty()) how.push_back(finish_of_row(row, voice.words));
  if (!entry.note.empty()) how.push_back(voice.words.written(entry.note));
  if (row.part->lay() == Lay::with) how.push_back(voice.words.say(Phrase::lay_with));
  if (entry.lay == Lay::across) how.push_back(voice.words.say(Phrase::lay_across));
  if (entry.lay == Lay::against) how.push_back(voice.words.say(Phrase::lay_against));
  if (!row.stance.empty()) how.push_back(row.stance);
  return how;
}

bool same_target(const Target& a, const Target& b) {
  return a.median == b.median && a.visits == b.visits && a.newest == b.newest;
}

/// "left at 16 mm, 5 visits, last 24 Nov": what visits measured, for the places of a row. Nothing
/// where it is just what the row leaves.
std::string measured_of(const StyleRow& row, const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  struct Group {
    const Target* target;
    std::vector<Place> places;
  };
  std::vector<Group> groups;
  for (const Place place : row.places) {
    const Target* const target = find_target(input.plan.targets, place);
    if (target == nullptr) continue;
    if (row.left && row.left->low == target->median && row.left->high == target->median) continue;
    const auto same = std::ranges::find_if(
        groups, [&](const Group& group) { return same_target(*group.target, *target); });
    Group& into = same != groups.end() ? *same : groups.emplace_back(Group{target, {}});
    into.places.push_back(place);
  }
  std::vector<std::string> texts;
  for (const Group& group : groups) {
    std::string text = voice.words.say(Phrase::left_at,
                                       {shown(group.target->median, voice), group.target->visits,
                                        voice.locale.short_day(group.target->newest, input.today)});
    if (group.places.size() < row.places.size()) {
      text = grouped_text(group.places, voice) + " " + text;
    }
    texts.push_back(std::move(text));
  }
  return joined(texts, semicolon(voice.words));
}

/// The lines that a newer groomer needs for these places and their finish.
std::vector<Method> how_lines(const StyleRow& row) {
  std::vector<Method> lines;
  const auto add = [&](Method line) {
    // A line may begin with the very words of another.
    const bool said =
        std::ranges::any_of(lines, [&](Method other) { return begins_with(other, line); });
    if (!said) lines.push_back(line);
  };
  for (const Place place : row.places) {
    if (row.kind != RowKind::cut) break;
    if (const auto method = method_of(place.region)) add(*method);
    if (row.finish.empty()) continue;
    const auto part = finish_part(place.region);
    if (!part) continue;
    if (const FinishInfo* known = find_finish(*part, row.finish)) add(known->how);
  }
  return lines;
}

/// A line for a newer groomer may say what holds for every pet.
bool says(Method line, RuleId standing) {
  switch (standing) {
    case RuleId::ear_edge:
      return line == Method::ears_rounded || line == Method::ears_straight;
    case RuleId::pads:
      return line == Method::pads;
    default:
      return false;
  }
}

TableCell part_cell(const StyleRow& row, const SheetDesk& desk, WithHow with_how) {
  const auto& [input, voice] = desk;
  const auto face = row.differs ? Face::bold : Face::semibold;
  TableCell cell{{{capitalised(row.names), face}}, false};
  const std::vector<std::string> how = how_of(row, voice);
  if (!how.empty()) cell.text.push_back({"\u2007" + joined(how, semicolon(voice.words))});
  if (!row.instead.empty()) {
    cell.text.push_back({how.empty() ? "\u2007" : semicolon(voice.words)});
    cell.text.push_back({row.instead, Face::semibold});
  }
  if (const std::string measured = measured_of(row, desk); !measured.empty()) {
    cell.text.push_back({cell.text.size() == 1 ? "\u2007" : semicolon(voice.words)});
    cell.text.push_back({measured, Face::semibold});
  }
  const auto add = [&](const std::string& line) {
    cell.text.push_back({(cell.text.size() == 1 ? "\u2007" : ". ") + capitalised(line)});
  };
  const std::vector<Method> lines =
      with_how == WithHow::yes ? how_lines(row) : std::vector<Method>();
  for (const Method line : lines) add(how_text(line, voice.words));
  for (const Caution* const one : row.standing) {
    const bool said =
        std::ranges::any_of(lines, [&](Method line) { return says(line, one->rule); });
    if (!said) add(caution_text(one->instead, voice));
  }
  if (input.source && row.part != nullptr) {
    cell.text.push_back({"\n" + input.source(row.part->entry.span), std::nullopt, Role::foot});
  }
  return cell;
}

TableCell tool_cell(const StyleRow& row) {
  TableCell cell{{{row.tool, Face::semibold}}, false};
  if (row.kind_of_tool) cell.patch = hatched({}, *row.kind_of_tool);
  return cell;
}

/// A row but for its tool. What is not cut needs no bar.
TableRow table_row(const StyleRow& row, const SheetDesk& desk, WithHow with_how) {
  const auto& [input, voice] = desk;
  const auto face = row.differs ? std::optional(Face::bold) : std::nullopt;
  TableRow made;
  made.id = row.id();
  made.origin = {row.names, row.part != nullptr ? row.part->entry.span : input.pet.span};
  if (!row.natural && row.kind == RowKind::cut) made.bar = row.left;
  made.cells.push_back({{{std::to_string(row.number), Face::semibold}}, row.differs});
  made.cells.push_back(part_cell(row, desk, with_how));
  made.cells.push_back({{{leaves(row, voice), face}}, false});
  return made;
}

/// Some of the rows in one narrow column, each tool over its rows.
BlockPtr narrow_table(std::span<const StyleRow> rows, const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  using Kind = TableColumn::Kind;
  std::vector<TableColumn> columns{{"", Kind::natural},
                                   {voice.words.say(Phrase::head_part), Kind::flexible},
                                   {voice.words.say(Phrase::head_leaves), Kind::natural}};
  std::vector<TableRow> table;
  for (const StyleRow& row : rows) {
    if (row.opens_group || &row == rows.data()) {
      TableRow head;
      head.opens_group = head.spans = head.joins_next = true;
      head.origin = {row.tool, input.pet.span};
      head.cells = {{}, tool_cell(row)};
      table.push_back(std::move(head));
    }
    table.push_back(table_row(row, desk, WithHow::no));
  }
  return std::make_shared<Table>(std::move(columns), std::move(table), Role::body,
                                 Origin{"table of parts", input.pet.span});
}
}  // namespace

BlockPtr style_table(const std::vector<StyleRow>& rows, const SheetDesk& desk, WithHow with_how,
                     std::vector<SheetRow> after) {
  const auto& [input, voice] = desk;
  using Kind = TableColumn::Kind;
  std::vector<TableColumn> columns{
      {"", Kind::natural},
      {voice.words.say(Phrase::head_tool), Kind::natural},
      {voice.words.say(Phrase::head_part), Kind::flexible},
      {voice.words.say(Phrase::head_leaves), Kind::natural},
  };
  std::vector<TableRow> table;
  for (const StyleRow& row : rows) {
    TableRow made = table_row(row, desk, with_how);
    made.opens_group = row.opens_group;
    // Rows with the same tool share its name.
    made.cells.insert(made.cells.begin() + 1, row.opens_group ? tool_cell(row) : TableCell{});
    table.push_back(std::move(made));
  }
  for (SheetRow& note : after) {
    TableRow made;
    made.origin = {note.label, note.span};
    made.opens_group = true;
    made.spans = true;
    made.cells.push_back({});
    made.cells.push_back({{{note.label, Face::semibold}}, false});
    made.cells.push_back({std::move(note.text), false});
    table.push_back(std::move(made));
  }
  return std::make_shared<Table>(std::move(columns), std::move(table), Role::body,
                                 Origin{"table of parts", input.pet.span});
}

BlockPtr style_table_in_two(const std::vector<StyleRow>& rows, const SheetDesk& desk) {
  // Where rows wrap is not known here, so a few places to divide at are tried.
  constexpr std::size_t about = 3;
  const std::size_t half = (rows.size() + 1) / 2;
  std::vector<BlockPtr> arrangements;
  for (std::size_t at = half > about ? half - about : 1; at <= half + about && at < rows.size();
       ++at) {
    const std::span all(rows);
    arrangements.push_back(
        std::make_shared<Beside>(std::vector<Beside::Cell>{{narrow_table(all.first(at), desk)},
                                                           {narrow_table(all.subspan(at), desk)}},
                                 Length::mm(6), Beside::Line::top));
  }
  if (arrangements.empty()) return narrow_table(rows, desk);
  return std::make_shared<Shortest>(std::move(arrangements));
}

std::vector<BlockPtr> style_table_in_pieces(const std::vector<StyleRow>& rows,
                                            const SheetDesk& desk) {
  constexpr std::size_t most_rows = 3,
                        enough_letters = 80;  // of notes, so that any paper holds a piece
  const std::span all(rows);
  std::vector<BlockPtr> out;
  for (std::size_t at = 0; at < rows.size();) {
    std::size_t end = at, letters = 0;
    do {
      const TrimPart* const part = rows[end].part;
      letters += rows[end].names.size() + (part != nullptr ? part->entry.note.size() : 0);
    } while (++end < rows.size() && end - at < most_rows && letters < enough_letters);
    out.push_back(narrow_table(all.subspan(at, end - at), desk));
    at = end;
  }
  return out;
}
}  // namespace furnish
