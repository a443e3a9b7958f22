#include "sheet/style_table.h"

#include <algorithm>
#include <iterator>
#include <span>

#include "base/text.h"
#include "figure/hatching.h"
#include "page/forms.h"
#include "page/goes_on.h"
#include "page/shortest.h"
#include "page/stack.h"
#include "page/table.h"
#include "plan/restraints.h"
#include "sheet/own_words.h"
#include "sheet/restraint_text.h"
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

std::string finish_of_part(const RowPart& part, const SheetVoice& voice) {
  const auto finish = finish_part(part.part->place.region);
  if (!finish || find_finish(*finish, part.finish) == nullptr) {
    return salons_words(part.finish, voice);
  }
  return finish_text(*finish, part.finish, voice.words);
}

/// "round, level with the cheeks; from behind".
std::vector<std::string> how_of(const RowPart& part, const StyleRow& row, const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  std::vector<std::string> how;
  if (part.part == nullptr) return how;
  const TrimEntry entry = taken(*part.part, input.plan.cautions);
  if (row.wash_first) how.push_back(how_text(Method::wash_first, voice.words));
  if (!part.finish.empty()) how.push_back(finish_of_part(part, voice));
  if (!entry.note.empty()) how.push_back(salons_words(entry.note, voice));
  if (entry.lay_given && entry.lay == Lay::with) how.push_back(voice.words.say(Phrase::lay_with));
  if (entry.lay == Lay::across) how.push_back(voice.words.say(Phrase::lay_across));
  if (entry.lay == Lay::against) how.push_back(voice.words.say(Phrase::lay_against));
  return how;
}

bool same_target(const Target& a, const Target& b) {
  return a.median == b.median && a.visits == b.visits && a.newest == b.newest;
}

/// What the last visit measured at a place that was cut as planned; empty if it did not.
std::optional<Target> measured_once(Place place, const SheetInput& input) {
  if (input.latest == nullptr) return std::nullopt;
  const auto here = [&](const auto& one) { return one.place == place; };
  const auto there = [&](const auto& one) { return meets(one.place, place); };
  const auto left = std::ranges::find_if(input.latest->went_out, here);
  if (left == input.latest->went_out.end() || !left->length) return std::nullopt;
  if (std::ranges::any_of(input.latest->done, there)) return std::nullopt;
  return Target{place, *left->length, input.latest->date.value, 1};
}

/// "left at 16 mm, 5 visits, last 24 Nov": what visits measured, for the places of a row. Nothing
/// where it is just what the row leaves.
std::string measured_of(const StyleRow& row, const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  struct Group {
    Target target;
    std::vector<Place> places;
  };
  std::vector<Group> groups;
  for (const Place place : row.places) {
    const Target* const often = find_target(input.plan.targets, place);
    const auto target = often != nullptr ? std::optional(*often) : measured_once(place, input);
    if (!target) continue;
    if (row.left && row.left->low == target->median && row.left->high == target->median) continue;
    const auto same = std::ranges::find_if(
        groups, [&](const Group& group) { return same_target(group.target, *target); });
    Group& into = same != groups.end() ? *same : groups.emplace_back(Group{*target, {}});
    into.places.push_back(place);
  }
  std::vector<std::string> texts;
  for (const Group& group : groups) {
    std::string text = voice.words.say(Phrase::left_at,
                                       {shown(group.target.median, voice), group.target.visits,
                                        voice.locale.short_day(group.target.newest, input.today)});
    if (group.places.size() < row.places.size()) {
      text = grouped_text(group.places, voice) + " " + text;
    }
    texts.push_back(std::move(text));
  }
  return joined(texts, semicolon(voice.words));
}

TableCell part_cell(const StyleRow& row, const SheetDesk& desk, RowCautions cautions) {
  const auto& [input, voice] = desk;
  const auto face = row.differs ? Face::bold : Face::semibold;
  TableCell cell;
  for (const RowPart& part : row.parts) {
    if (!cell.text.empty()) cell.text.push_back({"\u00A0· "});
    cell.text.push_back({capitalised(part.names), face});
    const std::vector<std::string> how = how_of(part, row, desk);
    if (!how.empty()) cell.text.push_back({"\u2007" + joined(how, semicolon(voice.words))});
    if (!part.instead.empty()) {
      cell.text.push_back({how.empty() ? "\u2007" : semicolon(voice.words)});
      cell.text.push_back({part.instead, Face::semibold});
    }
  }
  if (const std::string measured = measured_of(row, desk); !measured.empty()) {
    cell.text.push_back({cell.text.size() == 1 ? "\u2007" : semicolon(voice.words)});
    cell.text.push_back({measured});
  }
  if (!row.restraints.empty()) {
    cell.text.push_back({cell.text.size() == 1 ? "\u2007" : semicolon(voice.words)});
    std::ranges::move(cautions == RowCautions::in_full
                          ? restraint_text(row.restraints, row.places, desk)
                          : restraint_words(row.restraints, desk),
                      std::back_inserter(cell.text));
  }
  for (const RowPart& part : row.parts) {
    if (!input.source || part.part == nullptr) continue;
    cell.text.push_back({"\n" + input.source(part.part->entry.span), std::nullopt, Role::foot});
  }
  return cell;
}

TableCell tool_cell(const StyleRow& row) {
  TableCell cell{{{row.tool, Face::semibold}}, false};
  if (row.kind_of_tool) cell.patch = hatched({}, *row.kind_of_tool);
  if (row.kind == RowKind::no_tool) {
    // As the figure has it.
    cell.patch = HatchMark{{}, 45, 0.8_mm, 0.16_mm, Ink::text, false};
    cell.struck = true;
  }
  return cell;
}

/// A row but for its tool. What is not cut needs no bar.
TableRow table_row(const StyleRow& row, const SheetDesk& desk, RowCautions cautions) {
  const auto& [input, voice] = desk;
  const auto face = row.differs ? std::optional(Face::bold) : std::nullopt;
  TableRow made;
  made.id = row.id();
  const TrimPart* const part = row.parts.front().part;
  made.origin = {row.names, part != nullptr ? part->entry.span : input.pet.span};
  if (has_bar(row)) made.bar = row.left;
  made.cells.push_back({{{std::to_string(row.number), Face::semibold}}, row.differs});
  made.cells.push_back(part_cell(row, desk, cautions));
  made.cells.push_back({{{leaves(row, voice), face}}, false});
  return made;
}

/// Some of the rows in one narrow column, each tool over its rows.
BlockPtr narrow_table(std::span<const StyleRow> rows, const SheetDesk& desk,
                      Table::Head shown = Table::Head::shown) {
  const auto& [input, voice] = desk;
  using Kind = TableColumn::Kind;
  std::vector<TableColumn> columns{
      {"", Kind::natural},
      {.head = voice.words.say(Phrase::head_part), .kind = Kind::flexible, .heads_rows = true},
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
    table.push_back(table_row(row, desk, RowCautions::in_full));
  }
  return std::make_shared<Table>(std::move(columns), std::move(table), Role::body,
                                 Origin{"table of parts", input.pet.span}, shown);
}

/// Where nothing is planned a hand writes what the owner says.
BlockPtr to_ask(const SheetDesk& desk) {
  return std::make_shared<BlankLine>(desk.voice.words.say(Phrase::no_trim));
}
}  // namespace

bool has_bar(const StyleRow& row) {
  constexpr Length shortest = 2_mm;  // less is a speck, and a number says it better
  return row.kind == RowKind::cut && !row.natural && row.left && row.left->low >= shortest;
}

BlockPtr style_table(const std::vector<StyleRow>& rows, const SheetDesk& desk, RowCautions cautions,
                     Length least_gutter) {
  const auto& [input, voice] = desk;
  if (rows.empty()) return to_ask(desk);
  using Kind = TableColumn::Kind;
  std::vector<TableColumn> columns{
      {"", Kind::natural},
      {voice.words.say(Phrase::head_tool), Kind::natural},
      {.head = voice.words.say(Phrase::head_part), .kind = Kind::flexible, .heads_rows = true},
      {voice.words.say(Phrase::head_leaves), Kind::natural},
  };
  std::vector<TableRow> table;
  for (const StyleRow& row : rows) {
    TableRow made = table_row(row, desk, cautions);
    made.opens_group = row.opens_group;
    // An empty cell could mean the tool above, or none.
    made.cells.insert(made.cells.begin() + 1, tool_cell(row));
    table.push_back(std::move(made));
  }
  return std::make_shared<Table>(std::move(columns), std::move(table), Role::body,
                                 Origin{"table of parts", input.pet.span}, Table::Head::shown,
                                 least_gutter);
}

BlockPtr style_table_in_two(const std::vector<StyleRow>& rows, const SheetDesk& desk) {
  if (rows.empty()) return to_ask(desk);
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
  // As many as any paper of that height has room for, with notes and the names of the tools.
  const auto most_rows =
      static_cast<std::size_t>(std::max(3.0, desk.input.paper.size.height / 40_mm));
  const std::size_t enough_letters = 27 * most_rows;
  const std::span all(rows);
  std::vector<BlockPtr> out;
  for (std::size_t at = 0; at < rows.size();) {
    std::size_t end = at, letters = 0;
    do {
      for (const RowPart& part : rows[end].parts) {
        letters += part.names.size() + (part.part != nullptr ? part.part->entry.note.size() : 0);
      }
    } while (++end < rows.size() && end - at < most_rows && letters < enough_letters);
    const auto some = all.subspan(at, end - at);
    out.push_back(std::make_shared<GoesOn>(narrow_table(some, desk),
                                           narrow_table(some, desk, Table::Head::none)));
    at = end;
  }
  return out;
}
}  // namespace furnish
