#include <algorithm>

#include "base/text.h"
#include "plan/clinical.h"
#include "sheet/alerts.h"
#include "sheet/own_words.h"
#include "sheet/shown.h"
#include "sheet/style_words.h"
#include "sheet/terms.h"

namespace furnish {
namespace {
/// The dangers, then the signs at which the work ends: the pet's own, and those that hold for every
/// dog.
std::vector<TextSpan> what_stops(const std::vector<AlertEntry>& alerts, const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  Sentences out(voice.words);
  for (const AlertEntry& alert : alerts) {
    if (alert.gravity == Gravity::row) out.add(alert.statement);
  }
  out.add(salons_words(input.pet.handling.stop, voice));
  if (has_condition(input.pet, Condition::seizures)) out.add(voice.words.say(Phrase::if_fit_head));
  out.add(voice.words.say(Phrase::if_breath_head));
  return out.take();
}

std::string left_of(const StyleRow& row, const SheetVoice& voice) {
  if (row.kind == RowKind::no_tool) return voice.words.say(Phrase::leaves_alone);
  if (row.natural) return voice.words.say(Phrase::leaves_natural);
  if (row.left) return shown(*row.left, voice);
  return voice.words.say(Phrase::leaves_unknown);
}

/// "1 Left hock, left alone; 8 chest, 30 mm"
void add_row(std::vector<TextSpan>& out, const StyleRow& row, const SheetVoice& voice) {
  const bool first = out.empty();
  if (!first) out.push_back({semicolon(voice.words)});
  out.push_back({std::to_string(row.number) + "\u00A0", Face::semibold});
  out.push_back(
      {(first ? capitalised(row.names) : row.names) + comma(voice.words) + left_of(row, voice)});
}

std::vector<TextSpan> what_differs(const std::vector<StyleRow>& rows, const SheetDesk& desk) {
  std::vector<TextSpan> out;
  for (const StyleRow& row : rows) {
    if (row.differs) add_row(out, row, desk.voice);
  }
  return out;
}

/// The longest and the shortest of what is cut; empty if nobody says how long.
std::vector<TextSpan> longest_and_shortest(const std::vector<StyleRow>& rows,
                                           const SheetDesk& desk) {
  std::vector<const StyleRow*> cut;
  for (const StyleRow& row : rows) {
    if (row.kind == RowKind::cut && row.left && !row.natural) cut.push_back(&row);
  }
  const auto high = [](const StyleRow* row) { return row->left->high; };
  std::vector<TextSpan> out;
  if (cut.empty()) return out;
  const auto longest = std::ranges::max_element(cut, {}, high),
             shortest = std::ranges::min_element(cut, {}, high);
  add_row(out, **longest, desk.voice);
  if (shortest != longest) add_row(out, **shortest, desk.voice);
  return out;
}

/// "Ears straight edge; tail plume, tip tidied; feet hare foot"
std::vector<TextSpan> how_it_ends(const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  std::vector<TextSpan> out;
  for (const FinishLine& line : input.pet.finish) {
    if (line.part == FinishPart::nails || line.part == FinishPart::extras) continue;
    const std::string words =
        finish_part_name(line.part, voice.words) + " " + finish_words(line, voice).text;
    out.push_back({out.empty() ? capitalised(words) : semicolon(voice.words) + words});
  }
  return out;
}
}  // namespace

std::vector<ReadBack> style_read_back(const std::vector<StyleRow>& rows, const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  std::vector<ReadBack> out;
  const auto ask = [&](Phrase question, std::vector<TextSpan> answer) {
    if (!answer.empty()) out.push_back({voice.words.say(question), std::move(answer)});
  };
  ask(Phrase::q_stop, what_stops(alert_entries(desk, CautionScope::all), desk));
  const bool differs = std::ranges::any_of(rows, [](const StyleRow& row) { return row.differs; });
  if (differs && input.pet.style) {
    ask(Phrase::q_differs, what_differs(rows, desk));
  } else {
    ask(Phrase::q_lengths, longest_and_shortest(rows, desk));
  }
  ask(Phrase::q_finish, how_it_ends(desk));
  return out;
}
}  // namespace furnish
