#include "sheet/owner_work.h"

#include <algorithm>

#include "sheet/shown.h"

namespace furnish {

std::string owner_work(const Tool& tool, std::optional<LengthRange> left, const SheetVoice& voice) {
  const Words& words = voice.words;
  if (std::holds_alternative<Brush>(tool)) return words.say(Phrase::did_brush);
  if (std::holds_alternative<HandStrip>(tool)) return words.say(Phrase::did_strip);
  if (std::holds_alternative<Scissor>(tool)) {
    return left ? words.say(Phrase::did_scissor, {shown(*left, voice)})
                : words.say(Phrase::did_scissor_eye);
  }
  return words.say(Phrase::did_clip, {shown(left.value_or(LengthRange{}), voice)});
}

std::optional<LengthRange> left_there(const PlacedEntry& work, const SheetInput& input) {
  const Plan& plan = input.plan;
  const auto exact = std::ranges::find(plan.growth, work.place, &RegionGrowth::place);
  if (exact != plan.growth.end()) return exact->left;
  const auto row = std::ranges::find_if(
      plan.growth, [&](const RegionGrowth& one) { return meets(one.place, work.place); });
  if (row != plan.growth.end()) return row->left;
  // What the drawer has in place of the planned tool.
  const TrimPart* const planned = find_part(input.pet.trim, work.place);
  if (planned != nullptr && same_work(planned->entry, work.entry)) {
    if (const PartLength* const part = find_length(plan.lengths, work.place)) return part->left;
  }
  return length_left({work.place, work.entry, SaidBy::pet, {}}, input.salon.kit, input.pet.coat)
      .left;
}
}  // namespace furnish
