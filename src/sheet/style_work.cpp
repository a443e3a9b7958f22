#include <algorithm>
#include <array>
#include <map>

#include "base/quantity.h"
#include "base/text.h"
#include "sheet/mix_text.h"
#include "sheet/style_parts.h"

namespace furnish {
namespace {
Phrase task_phrase(Task task) {
  switch (task) {
    case Task::look_over:
      return Phrase::task_look_over;
    case Task::brush_out:
      return Phrase::task_brush_out;
    case Task::shampoo:
      return Phrase::task_shampoo;
    case Task::rinse:
      return Phrase::task_rinse;
    case Task::conditioner:
      return Phrase::task_conditioner;
    case Task::comb_through:
      return Phrase::task_comb_through;
    case Task::other_product:
      return Phrase::task_other;
    case Task::nails:
      return Phrase::task_nails;
    case Task::dry:
      return Phrase::task_dry;
    case Task::brush:
      return Phrase::task_brush;
    case Task::judge:
      return Phrase::task_judge;
    default:
      return Phrase::task_finish;
  }
}

std::string stance_text(Stance stance, const Words& words) {
  switch (stance) {
    case Stance::facing:
      return words.say(Phrase::stance_facing);
    case Stance::from_behind:
      return words.say(Phrase::stance_behind);
    case Stance::foot_lifted:
      return words.say(Phrase::stance_foot);
    case Stance::forelegs_lifted:
      return words.say(Phrase::stance_forelegs);
    case Stance::standing:
      break;
  }
  return {};
}

/// Places of a step by name, or by the numbers of their rows where they are many.
std::string step_places(const WorkStep& step, const std::vector<StyleRow>& rows,
                        const SheetVoice& voice) {
  if (step.places.size() <= 3) return places_text(step.places, voice);
  std::vector<std::string> numbers;
  for (const StyleRow& row : rows) {
    const bool met = std::ranges::any_of(row.line.parts, [&](const TrimPart* part) {
      return std::ranges::any_of(step.places,
                                 [&](Place place) { return meets(part->place, place); });
    });
    if (met) numbers.push_back(std::to_string(row.number));
  }
  return voice.words.say(Phrase::row_numbers, {joined(numbers, ", ")});
}

/// True if the next step goes on with the tool in hand.
bool same_tool(const WorkStep& a, const WorkStep& b) {
  return a.task == Task::cut && b.task == Task::cut && a.tool == b.tool &&
         a.substitute == b.substitute;
}

/// The mix that a step of the bath uses, found by its product's name.
const Mix* mix_of(const WorkStep& step, const BathPlan& bath) {
  if (step.task != Task::shampoo && step.task != Task::conditioner &&
      step.task != Task::other_product) {
    return nullptr;
  }
  for (const Mix& mix : bath.mixes) {
    if (mix.use.product.name == step.words) return &mix;
  }
  return nullptr;
}

bool in_tub(Stage stage) {
  return stage == Stage::bath || stage == Stage::wet_comb_out;
}

bool goes_on(const WorkStep& a, const WorkStep& b) {
  if (b.task == Task::cut) return false;
  return (in_tub(a.stage) && in_tub(b.stage)) ||
         (a.stage == Stage::dry && b.stage == Stage::brush_out) ||
         (a.stage == Stage::brush_out && b.stage == Stage::brush_out);
}

/// A step without a tool: "Shampoo: oat shampoo 45 ml + 455 ml water, 4 min".
std::vector<TextSpan> plain_step(const WorkStep& step, const SheetInput& input,
                                 const SheetVoice& voice) {
  std::vector<TextSpan> line{{voice.words.say(task_phrase(step.task)), Face::semibold}};
  if (const Mix* mix = mix_of(step, input.plan.bath)) {
    line.push_back({": "});
    std::vector<TextSpan> text = mix_text(*mix, voice, MixDetail::full);
    text.pop_back();  // its full stop
    std::ranges::move(text, std::back_inserter(line));
    return line;
  }
  std::string more;
  if (!step.words.empty()) more = ": " + step.words;
  if (step.time) more += (more.empty() ? " " : ", ") + to_text(*step.time);
  if (!more.empty()) line.push_back({more});
  return line;
}

void add_how(std::vector<TextSpan>& line, const WorkStep& step) {
  for (const std::string_view how : step.how) line.push_back({". " + capitalised(how)});
}
}  // namespace

std::vector<std::vector<TextSpan>> style_steps(const std::vector<StyleRow>& rows,
                                               const SheetInput& input, const SheetVoice& voice,
                                               WithHow with_how) {
  std::vector<std::vector<TextSpan>> lines;
  const auto& order = input.plan.order;
  for (std::size_t i = 0; i < order.size(); ++i) {
    const WorkStep& step = order[i];
    std::vector<TextSpan> line;
    if (step.task != Task::cut || !step.tool) {
      line = plain_step(step, input, voice);
      if (with_how == WithHow::yes) add_how(line, step);
      // What goes on in the tub, and what ends the drying, is one step to whoever does it.
      while (i + 1 < order.size() && goes_on(order[i], order[i + 1])) {
        ++i;
        std::vector<TextSpan> more = plain_step(order[i], input, voice);
        line.push_back({"; "});
        std::ranges::move(more, std::back_inserter(line));
        if (with_how == WithHow::yes) add_how(line, order[i]);
      }
      lines.push_back(std::move(line));
      continue;
    }
    std::string tool = capitalised(tool_text(*step.tool, voice));
    if (step.substitute) tool += " (" + voice.words.say(Phrase::instead_of) + ")";
    line.push_back({tool, Face::semibold});
    std::string between = ": ";
    std::vector<const WorkStep*> taken;
    for (;; ++i) {
      const WorkStep& part = order[i];
      std::string text = step_places(part, rows, voice);
      if (const std::string stance = stance_text(part.stance, voice.words); !stance.empty()) {
        text += " (" + stance + ")";
      }
      line.push_back({between + text});
      between = "; ";
      taken.push_back(&part);
      if (i + 1 == order.size() || !same_tool(part, order[i + 1])) break;
    }
    for (const WorkStep* part : taken) {
      if (with_how == WithHow::yes) add_how(line, *part);
    }
    lines.push_back(std::move(line));
  }
  return lines;
}

std::vector<StyleNote> style_notes(const SheetInput& input, const SheetVoice& voice) {
  const Words& words = voice.words;
  std::vector<StyleNote> notes;
  const bool diluted = std::ranges::any_of(
      input.plan.bath.mixes, [](const Mix& mix) { return mix.measured.has_value() && !mix.neat; });
  if (diluted) {
    notes.push_back({words.say(Phrase::label_bath),
                     {{words.say(Phrase::mixed_on) + " ________________"}},
                     input.pet.bath.span});
  }
  // Seams that end in the same place with the same shears are one blend to a groomer.
  std::map<std::pair<Place, std::optional<Shears>>, std::vector<Place>> into;
  for (const Blend& blend : input.plan.blends) {
    auto& from = into[{blend.shorter, blend.with}];
    if (std::ranges::find(from, blend.longer) == from.end()) from.push_back(blend.longer);
  }
  if (!into.empty()) {
    StyleNote blends{words.say(Phrase::label_blend), {}, input.pet.span};
    for (const auto& [target, from] : into) {
      std::string text =
          words.say(Phrase::blend_into, {places_text(from, voice), to_text(target.first)});
      if (!blends.text.empty()) blends.text.push_back({" · "});
      blends.text.push_back({capitalised(text)});
    }
    if (const auto shears = input.plan.blends.front().with) {
      blends.text.push_back(
          {", " + words.say(Phrase::blend_with, {tool_text(Scissor{*shears}, voice)})});
    }
    notes.push_back(std::move(blends));
  }
  StyleNote finish{words.say(Phrase::label_styling), {}, input.pet.span};
  for (const FinishLine& line : input.pet.finish) {
    const bool nails = line.part == "nails";
    if (!nails && line.part != "extras") continue;
    if (!finish.text.empty()) finish.text.push_back({" · "});
    finish.text.push_back({nails ? words.say(Phrase::finish_nails) + " " + line.words : line.words,
                           line.differs ? std::optional(Face::semibold) : std::nullopt});
    finish.span = line.span;
  }
  if (!finish.text.empty()) {
    finish.text.front().text = capitalised(finish.text.front().text);
    notes.push_back(std::move(finish));
  }
  return notes;
}
}  // namespace furnish
