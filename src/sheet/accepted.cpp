#include "sheet/accepted.h"

#include <algorithm>

#include "base/text.h"
#include "sheet/caution_words.h"
#include "sheet/own_words.h"
#include "sheet/terms.h"
#include "sheet/trim_lines.h"

namespace furnish {
namespace {
/// Places and their tool, where it is one; else the caution itself.
std::string accepted_what(const Caution& caution, const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  if (caution.places.empty()) return caution_text(caution.what, voice);
  std::string out = grouped_text(caution.places, voice);
  const TrimPart* const first = find_part(input.pet.trim, caution.places.front());
  const bool one_tool = first != nullptr && std::ranges::all_of(caution.places, [&](Place place) {
                          const TrimPart* const part = find_part(input.pet.trim, place);
                          return part != nullptr && part->entry.tool == first->entry.tool;
                        });
  if (one_tool) out += comma(voice.words) + tool_text(first->entry.tool, voice);
  return out;
}
}  // namespace

std::optional<SheetRow> accepted_row(const SheetDesk& desk, CautionScope scope) {
  const auto& [input, voice] = desk;
  SheetRow row{voice.words.say(Phrase::label_accepted), {}, {}};
  Sentences text(voice.words);
  const auto add = [&](const Caution& caution) {
    if (!caution.accepted) return;
    if (scope == CautionScope::card && !belongs_on_card(caution)) return;
    const Acceptance& accepted = *caution.accepted;
    text.add(voice.words.say(Phrase::accepted_on,
                             {capitalised(accepted_what(caution, desk)),
                              voice.locale.short_day(accepted.signed_on, input.today),
                              sentence(salons_words(accepted.reason, voice))}));
    row.span = accepted.span;
  };
  std::ranges::for_each(input.plan.cautions, add);
  if (scope == CautionScope::all) std::ranges::for_each(input.plan.standing, add);
  if (text.empty()) return std::nullopt;
  row.text = text.take();
  return row;
}
}  // namespace furnish
