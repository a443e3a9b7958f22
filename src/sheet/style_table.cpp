#include <algorithm>
#include <array>

#include "base/quantity.h"
#include "base/text.h"
#include "sheet/style_parts.h"

namespace furnish {
namespace {
std::string both_units(LengthRange left, Units first, Leaves form) {
  const Units second = first == Units::metric ? Units::us : Units::metric;
  const std::string_view between = form == Leaves::two_lines ? "\n" : "\u00A0· ";
  return to_text(left, first) + std::string(between) + to_text(left, second);
}

/// The finish that the pet or the style asks for on a region that has one.
std::string finish_of(Region region, const Pet& pet) {
  const std::string_view part = region == Region::ears   ? "ears"
                                : region == Region::tail ? "tail"
                                : region == Region::feet ? "feet"
                                                         : "";
  for (const FinishLine& line : pet.finish) {
    if (line.part == part) return line.words;
  }
  return {};
}

/// True if a part may share a row: nothing but its place is its own.
bool fits(const StyleRow& row, const TrimPart& part, const std::optional<LengthRange>& left,
          const std::string& finish, const std::string& instead) {
  const TrimPart& first = *row.line.parts.front();
  return same_work(first.entry, part.entry) && row.line.differs == part.differs() &&
         row.finish == finish && row.instead == instead && (row.natural || row.left == left);
}
}  // namespace

std::vector<StyleRow> style_rows(const SheetInput& input, const SheetVoice& voice) {
  std::vector<StyleRow> rows;
  for (const TrimPart& part : input.pet.trim) {
    const PartLength* length = find_length(input.plan.lengths, part.place);
    const auto left = length != nullptr ? length->left : std::nullopt;
    const std::string finish = finish_of(part.place.region, input.pet);
    const DrawerGap* gap = find_gap(input.plan.drawer, part.place);
    const std::string instead = gap != nullptr ? drawer_text(*gap, voice) : std::string();
    const auto same = std::ranges::find_if(
        rows, [&](const StyleRow& row) { return fits(row, part, left, finish, instead); });
    if (same != rows.end()) {
      same->line.parts.push_back(&part);
      continue;
    }
    StyleRow row;
    row.number = static_cast<int>(rows.size()) + 1;
    row.line.parts = {&part};
    row.line.differs = part.differs();
    row.left = left;
    row.natural = length != nullptr && length->basis == LengthBasis::natural;
    row.finish = finish;
    row.instead = instead;
    rows.push_back(std::move(row));
  }
  for (StyleRow& row : rows) name_line(row.line, voice);
  return rows;
}

std::vector<TableColumn> style_columns(const SheetVoice& voice) {
  using Kind = TableColumn::Kind;
  return {
      {"", Kind::natural},
      {voice.words.say(Phrase::head_part), Kind::flexible, {}, 5},
      {voice.words.say(Phrase::head_tool), Kind::flexible, {}, 9},
      {voice.words.say(Phrase::head_leaves), Kind::natural},
  };
}

std::vector<TableRow> style_table(const std::vector<StyleRow>& rows, const SheetInput& input,
                                  const SheetVoice& voice, Leaves form) {
  std::vector<TableRow> table;
  for (const StyleRow& row : rows) {
    const TrimEntry& entry = row.line.parts.front()->entry;
    const auto face = row.line.differs ? std::optional(Face::bold) : std::nullopt;
    TableRow made;
    made.id = row.id();
    made.origin = {row.line.places, entry.span};
    made.cells.push_back({{{std::to_string(row.number), Face::semibold}}, false});

    TableCell part{{{capitalised(row.line.places), face}}, row.line.differs};
    if (input.source)
      part.text.push_back({"\n" + input.source(entry.span), std::nullopt, Role::foot});
    made.cells.push_back(std::move(part));

    std::string tool = tool_text(entry.tool, voice);
    if (entry.lay == Lay::across) tool += ", " + voice.words.say(Phrase::lay_across);
    if (entry.lay == Lay::against) tool += ", " + voice.words.say(Phrase::lay_against);
    TableCell how{{{tool, face}}, false};
    for (const std::string* more : {&row.finish, &entry.note}) {
      if (!more->empty()) how.text.push_back({"; " + *more});
    }
    if (!row.instead.empty()) how.text.push_back({"; " + row.instead, Face::semibold});
    made.cells.push_back(std::move(how));

    std::string leaves = voice.words.say(Phrase::leaves_unknown);
    if (row.natural) {
      leaves = voice.words.say(Phrase::leaves_natural);
    } else if (row.left) {
      leaves = both_units(*row.left, voice.locale.units(), form);
    }
    made.cells.push_back({{{leaves, face}}, false});
    table.push_back(std::move(made));
  }
  return table;
}

FigureInput style_figure(const std::vector<StyleRow>& rows, const SheetInput& input,
                         const SheetVoice& voice) {
  FigureInput figure;
  figure.build = input.pet.build;
  figure.coat = input.pet.coat;
  if (const auto& weight = input.plan.health.weight) figure.weight = weight->weight;
  for (const PartLength& length : input.plan.lengths) {
    figure.left[static_cast<std::size_t>(length.place.region)] = length.left;
  }
  for (const TrimPart& part : input.pet.trim) {
    figure.tools[static_cast<std::size_t>(part.place.region)] = kind_of(part.entry.tool);
  }
  if (input.pet.style) figure.stepped = input.pet.style->lines;
  for (const StyleRow& row : rows) {
    FigureCallout callout;
    callout.number = row.number;
    callout.differs = row.line.differs;
    callout.row = row.id();
    for (const TrimPart* part : row.line.parts) callout.regions.push_back(part->place.region);
    figure.callouts.push_back(std::move(callout));
  }
  for (const Alert& alert : input.pet.alerts) {
    for (const auto& place : alert.avoid) figure.spots.push_back({place.value, SpotKind::avoid, 0});
  }
  // Seen from the side that has something to mind; from the left where both or neither do.
  const auto on = [&](Side side) {
    return std::ranges::any_of(figure.spots,
                               [&](const FigureSpot& spot) { return spot.place.side == side; });
  };
  figure.side = on(Side::right) && !on(Side::left) ? Side::right : Side::left;
  figure.alt_lead = voice.words.say(Phrase::figure_lead, {input.pet.name.value});
  figure.units = voice.locale.units();
  return figure;
}

std::vector<TrueSizeBar> style_bars(const std::vector<StyleRow>& rows, const SheetVoice& voice) {
  struct Bar {
    LengthRange left;
    std::vector<std::string> numbers;
  };
  std::vector<Bar> bars;
  for (const StyleRow& row : rows) {
    if (!row.left || row.natural) continue;
    const auto same = std::ranges::find(bars, *row.left, &Bar::left);
    if (same != bars.end()) {
      same->numbers.push_back(std::to_string(row.number));
    } else {
      bars.push_back({*row.left, {std::to_string(row.number)}});
    }
  }
  std::ranges::sort(bars, {},
                    [](const Bar& bar) { return std::pair(bar.left.high, bar.left.low); });
  std::vector<TrueSizeBar> out;
  for (const Bar& bar : bars) {
    out.push_back(
        {bar.left, voice.words.say(Phrase::bar_rows, {to_text(bar.left, voice.locale.units()),
                                                      joined(bar.numbers, ", ")})});
  }
  return out;
}
}  // namespace furnish
