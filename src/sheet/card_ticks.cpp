#include "sheet/card_ticks.h"

#include <algorithm>

namespace furnish {

std::vector<std::string> card_ticks(const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  const auto has = [&](Stage stage) {
    return std::ranges::any_of(input.plan.order,
                               [&](const WorkStep& step) { return step.stage == stage; });
  };
  const auto has_task = [&](Task task) {
    return std::ranges::any_of(input.plan.order,
                               [&](const WorkStep& step) { return step.task == task; });
  };
  std::vector<std::string> ticks{voice.words.say(Phrase::tick_in)};
  const auto add = [&](bool wanted, Phrase phrase) {
    if (wanted) ticks.push_back(voice.words.say(phrase));
  };
  const bool all_unwashed =
      has(Stage::clip) && std::ranges::all_of(input.plan.order, [](const WorkStep& step) {
        return step.stage != Stage::clip || step.before_bath;
      });
  if (all_unwashed) add(true, Phrase::tick_clip);
  add(has_task(Task::brush_out), Phrase::tick_brush_out);
  add(has(Stage::bath), Phrase::tick_bath);
  add(has(Stage::nails), Phrase::tick_nails);
  add(has(Stage::dry), Phrase::tick_dry);
  add(has(Stage::clip) && !all_unwashed, Phrase::tick_clip);
  add(has(Stage::scissor), Phrase::tick_scissor);
  add(has(Stage::finish), Phrase::tick_finish);
  ticks.push_back(voice.words.say(Phrase::tick_check));
  return ticks;
}
}  // namespace furnish
