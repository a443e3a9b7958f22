#include "sheet/card_ticks.h"

#include <algorithm>
#include <optional>

namespace furnish {
namespace {
/// The box for a step; none for what is done in passing.
std::optional<Phrase> tick_of(const WorkStep& step) {
  if (step.task == Task::cut && step.tool) {
    if (std::holds_alternative<HandStrip>(*step.tool)) return Phrase::tick_strip;
    if (step.stage == Stage::clip) return Phrase::tick_clip;
    if (step.stage == Stage::scissor) return Phrase::tick_scissor;
  }
  if (step.task == Task::brush_out) return Phrase::tick_brush_out;
  switch (step.stage) {
    case Stage::bath:
      return Phrase::tick_bath;
    case Stage::nails:
      return Phrase::tick_nails;
    case Stage::dry:
      return Phrase::tick_dry;
    case Stage::finish:
      return Phrase::tick_finish;
    default:
      return std::nullopt;
  }
}
}  // namespace

std::vector<std::string> card_ticks(const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  // What is cut before the bath and again after it has a box each time: both are work.
  std::vector<Phrase> boxes;
  bool washed = false;
  std::size_t since_bath = 0;
  for (const WorkStep& step : input.plan.order) {
    if (step.stage == Stage::bath && !washed) {
      washed = true;
      since_bath = boxes.size();
    }
    const auto box = tick_of(step);
    if (box && std::find(boxes.begin() + static_cast<std::ptrdiff_t>(since_bath), boxes.end(),
                         *box) == boxes.end()) {
      boxes.push_back(*box);
    }
  }
  std::vector<std::string> ticks{voice.words.say(Phrase::tick_in)};
  for (const Phrase box : boxes) ticks.push_back(voice.words.say(box));
  ticks.push_back(voice.words.say(Phrase::tick_check));
  return ticks;
}
}  // namespace furnish
