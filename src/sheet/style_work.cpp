#include "sheet/style_work.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "base/said_in.h"
#include "base/text.h"
#include "plan/restraints.h"
#include "sheet/caution_words.h"
#include "sheet/last_time.h"
#include "sheet/mix_text.h"
#include "sheet/own_words.h"
#include "sheet/restraint_text.h"
#include "sheet/shown.h"
#include "sheet/terms.h"
#include "sheet/trim_lines.h"

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
      return Phrase::tick_check;
    default:
      return Phrase::task_finish;
  }
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

bool is_bare(const Pet& pet) {
  return pet.coat == Coat::smooth || pet.coat == Coat::hairless;
}

bool in_tub(Stage stage) {
  return stage == Stage::bath || stage == Stage::wet_comb_out;
}

/// What goes on in the tub, and what ends the drying, is one thing to whoever does it.
bool goes_on(const WorkStep& a, const WorkStep& b) {
  return (in_tub(a.stage) && in_tub(b.stage)) ||
         (a.stage == Stage::dry && b.stage == Stage::brush_out) ||
         (a.stage == Stage::brush_out && b.stage == Stage::brush_out);
}

/// True if a bottle's name says already what it is for: "Gentle conditioner". Words of one stem
/// count ("acondicionar", "Acondicionador").
bool names_task(const std::string& bottle, const std::string& task) {
  constexpr std::size_t stem = 8;
  const std::string name = " " + plain_letters(bottle), wanted = plain_letters(task);
  return name.find(" " + wanted.substr(0, stem)) != std::string::npos;
}

/// What is done, without the task's name: "Oat shampoo **45 ml + 455 ml water**, 4 min".
std::vector<TextSpan> step_text(const WorkStep& step, const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  if (const Mix* mix = mix_of(step, input.plan.bath)) {
    std::vector<TextSpan> text = mix_text(*mix, voice, MixDetail::full);
    text.pop_back();  // its full stop
    return text;
  }
  // Nails have the trade's words; how a coat is brushed and dried is the pet's own.
  std::string text = step.task == Task::nails
                         ? finish_text(FinishPart::nails, step.words, voice.words)
                         : salons_words(step.words, voice);
  if (step.task == Task::dry) {
    text = drying_text(desk);
    // What handling says of the dryer is minded here, where the dryer is in hand.
    const std::string more = dryer_text(desk);
    if (!more.empty()) text += (text.empty() ? "" : semicolon(voice.words)) + uncapitalised(more);
  }
  if (step.task == Task::look_over) {
    text = voice.words.say(is_bare(input.pet) ? Phrase::look_over_bare : Phrase::look_over_how);
  }
  if (step.task == Task::nails && (step.pose.lies || step.pose.feet_low)) {
    text += (text.empty() ? "" : comma(voice.words)) + posture_text(step, voice);
  }
  if (step.time) text += (text.empty() ? "" : comma(voice.words)) + shown(*step.time, voice);
  if (text.empty()) return {};
  return {{text}};
}

void add_how(std::vector<TextSpan>& line, const WorkStep& step, const SheetDesk& desk) {
  const bool bare = is_bare(desk.input.pet);
  for (const Method how : step.how) {
    // Nothing to comb layer by layer, and no slicker on skin that shows.
    if (bare && (how == Method::before_bath || how == Method::damp_brush_out)) continue;
    line.push_back({(line.empty() ? "" : ". ") + capitalised(how_text(how, desk.voice.words))});
  }
}

/// What the plan forbids or limits in a step, after what it says.
void add_restraints(std::vector<TextSpan>& line, const WorkStep& step, const SheetDesk& desk) {
  const std::vector<Matter> found = restraints(desk.input.plan.cautions, step);
  if (found.empty()) return;
  if (!line.empty()) line.push_back({semicolon(desk.voice.words)});
  std::ranges::move(restraint_text(found, step.places, desk), std::back_inserter(line));
}

/// Where nobody says how the coat is made ready for the water: what holds for every coat like it.
std::vector<TextSpan> standing_text(const WorkStep& step, const SheetDesk& desk) {
  const auto& standing = desk.input.plan.standing;
  const auto found = std::ranges::find(standing, RuleId::prebrush, &Caution::rule);
  const bool stands = step.task == Task::brush_out && found != standing.end() && !found->accepted;
  if (!stands) return {};
  return {{capitalised(caution_text(found->instead, desk.voice))}};
}
}  // namespace

std::string posture_text(const WorkStep& step, const SheetVoice& voice) {
  const auto phrase = [&] {
    switch (posture(step)) {
      case Posture::facing:
        return Phrase::stance_facing;
      case Posture::from_behind:
        return Phrase::stance_behind;
      case Posture::foot_lifted:
        return Phrase::stance_foot;
      case Posture::forelegs_lifted:
        return Phrase::stance_forelegs;
      case Posture::foot_low:
        return Phrase::stance_foot_low;
      case Posture::feet_down:
        return Phrase::stance_feet_down;
      case Posture::lying:
        return Phrase::stance_lying;
      default:
        return Phrase::stance_lying_foot;
    }
  };
  return posture(step) == Posture::standing ? std::string() : voice.words.say(phrase());
}

std::vector<SheetRow> style_before(const SheetDesk& desk, WithHow with_how) {
  const auto& [input, voice] = desk;
  std::vector<SheetRow> notes;
  const auto& order = input.plan.order;
  // Where a bottle is used on the day it was mixed there is no day to write.
  bool diluted = input.salon.mix_keeps.count() > 0 &&
                 std::ranges::any_of(input.plan.bath.mixes, [](const Mix& mix) {
                   return mix.measured.has_value() && !mix.neat;
                 });
  for (std::size_t i = 0; i < order.size(); ++i) {
    const WorkStep& step = order[i];
    if (step.before_bath && step.tool) {
      // Which part it is, the table says; here only that it comes before the water.
      SheetRow cut{
          voice.words.say(Phrase::clip_unwashed), {{tool_text(*step.tool, voice)}}, input.pet.span};
      while (i + 1 < order.size() && order[i + 1].before_bath && order[i + 1].tool) {
        const WorkStep& more = order[++i];
        if (more.tool == order[i - 1].tool) continue;
        cut.text.push_back({semicolon(voice.words) + tool_text(*more.tool, voice)});
      }
      notes.push_back(std::move(cut));
      continue;
    }
    if (step.stage > Stage::brush_out) break;
    SheetRow note{voice.words.say(task_phrase(step.task)), step_text(step, desk), input.pet.span};
    add_restraints(note.text, step, desk);
    if (with_how == WithHow::yes) add_how(note.text, step, desk);
    if (note.text.empty()) note.text = standing_text(step, desk);
    while (i + 1 < order.size() && goes_on(order[i], order[i + 1])) {
      const WorkStep& more = order[++i];
      std::vector<TextSpan> text = step_text(more, desk);
      std::string name = voice.words.say(task_phrase(more.task));
      if (!voice.words.language().starts_with("de")) name = uncapitalised(name);  // nouns stay
      if (!text.empty()) name = names_task(text.front().text, name) ? "" : name + " ";
      note.text.push_back({(note.text.empty() ? "" : semicolon(voice.words)) + name});
      std::ranges::move(text, std::back_inserter(note.text));
      add_restraints(note.text, more, desk);
      if (with_how == WithHow::yes) add_how(note.text, more, desk);
    }
    if (in_tub(step.stage) && std::exchange(diluted, false)) {
      note.text.push_back(
          {". " + voice.words.say(Phrase::mixed_on) + " " + said_in(no_words, "____________")});
    }
    notes.push_back(std::move(note));
  }
  return notes;
}

SheetRow style_last(const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  const Words& words = voice.words;
  SheetRow last{words.say(Phrase::tick_check), {}, input.pet.span};
  if (const FinishLine* const line = find_line(input.pet.finish, FinishPart::extras)) {
    last.label = words.say(Phrase::label_styling);
    last.span = line->span;
    last.text.push_back({own_words(line->words, voice).text,
                         line->differs ? std::optional(Face::bold) : std::nullopt});
    last.text.push_back({"\u00A0· "});
  }
  const bool lies =
      std::ranges::any_of(input.plan.order, [](const WorkStep& step) { return step.pose.lies; });
  last.text.push_back({words.say(lies ? Phrase::check_how_lying : Phrase::check_how)});
  return last;
}
}  // namespace furnish
