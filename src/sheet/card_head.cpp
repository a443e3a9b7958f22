#include "sheet/card_rows.h"

#include <algorithm>
#include <array>

#include "base/text.h"
#include "sheet/caution_words.h"
#include "sheet/shown.h"
#include "sheet/terms.h"
#include "sheet/trim_lines.h"

namespace furnish {
namespace {
Gravity gravity(Signal signal) {
  switch (signal) {
    case Signal::danger:
      return Gravity::row;
    case Signal::warning:
      return Gravity::panel;
    case Signal::caution:
      return Gravity::bar;
    case Signal::notice:
      break;
  }
  return Gravity::hairline;
}

Phrase signal_phrase(Signal signal) {
  constexpr std::array phrases{Phrase::danger, Phrase::warning, Phrase::caution, Phrase::notice};
  return phrases[static_cast<std::size_t>(signal)];
}

std::string age_text(const Pet& pet, Date today, const Words& words) {
  const int months = full_months(pet.born->value, today);
  if (months >= 24) return words.say(Phrase::age_years, {months / 12});
  if (months >= 4) return words.say(Phrase::age_months, {months});
  const auto weeks = (today - pet.born->value).count() / 7;
  return words.say(Phrase::age_weeks, {static_cast<int>(weeks)});
}

void append(std::vector<TextSpan>& spans, std::string_view between, TextSpan span) {
  if (span.text.empty()) return;
  if (!spans.empty()) spans.push_back({std::string(between)});
  spans.push_back(std::move(span));
}
}  // namespace

std::string sentence(const std::string& text) {
  constexpr std::array<std::string_view, 9> ends{".", "!", "?", ":", "…", "؟", "。", "！", "？"};
  std::string out = capitalised(trimmed(text));
  // What has a direction of its own keeps its full stop inside.
  constexpr std::string_view end_of_isolate = "\u2069";
  const bool apart = out.ends_with(end_of_isolate);
  if (apart) out.resize(out.size() - end_of_isolate.size());
  const bool ended =
      std::ranges::any_of(ends, [&](std::string_view end) { return out.ends_with(end); });
  if (!out.empty() && !ended) out += '.';
  if (apart) out += end_of_isolate;
  return out;
}

bool belongs_on_card(const Caution& caution) {
  if (caution.signal <= Signal::warning) return true;
  switch (caution.rule) {
    case RuleId::mats_before_water:
    case RuleId::prebrush:
    case RuleId::dryer_face:
    case RuleId::vaccination:
    case RuleId::weight_loss:
    case RuleId::senior:
    case RuleId::puppy:
    case RuleId::vet_work:
      return true;
    default:
      return false;
  }
}

std::vector<AlertEntry> alert_entries(const SheetInput& input, const SheetVoice& voice,
                                      CautionScope scope) {
  struct Ranked {
    Signal signal;
    AlertEntry entry;
  };
  std::vector<Ranked> ranked;
  const auto add = [&](Signal signal, const std::string& what, std::string action,
                       SourceSpan span) {
    ranked.push_back({signal,
                      {gravity(signal),
                       voice.words.say(signal_phrase(signal)),
                       sentence(what),
                       std::move(action),
                       {what, span}}});
  };
  for (const Alert& alert : input.pet.alerts) {
    std::string action = sentence(voice.words.written(alert.action));
    std::vector<Place> avoid;
    for (const auto& place : alert.avoid) avoid.push_back(place.value);
    if (!avoid.empty()) {
      if (!action.empty()) action += ' ';
      action += voice.words.say(Phrase::no_tool_on, {places_text(avoid, voice)});
    }
    add(alert.level, voice.words.written(alert.text), std::move(action), alert.span);
  }
  std::vector<Caution> told;
  std::ranges::copy_if(input.plan.cautions, std::back_inserter(told), [&](const Caution& caution) {
    if (scope == CautionScope::none) return false;
    return scope == CautionScope::all || (!caution.accepted && belongs_on_card(caution));
  });
  for (std::size_t i = 0; i < told.size(); ++i) {
    // Several that end in the same advice are one row: "Rabies: none on file. Distemper: …".
    std::string what = sentence(caution_text(told[i].what, voice));
    const Caution first = told[i];
    while (i + 1 < told.size() && told[i + 1].rule == first.rule &&
           told[i + 1].signal == first.signal && told[i + 1].instead == first.instead &&
           told[i + 1].accepted.has_value() == first.accepted.has_value()) {
      what += ' ' + sentence(caution_text(told[++i].what, voice));
    }
    std::string action = sentence(caution_text(first.instead, voice));
    if (first.accepted) {
      action = voice.words.say(Phrase::accepted_on,
                               {action, voice.locale.long_date(first.accepted->signed_on),
                                voice.words.written(first.accepted->reason)});
    }
    add(first.signal, what, std::move(action), first.span);
    ranked.back().entry.role = first.signal <= Signal::warning ? Role::action : Role::body;
  }
  std::ranges::stable_sort(ranked, {}, &Ranked::signal);
  std::vector<AlertEntry> out;
  for (Ranked& one : ranked) out.push_back(std::move(one.entry));
  return out;
}

std::vector<std::string> card_ticks(const SheetInput& input, const SheetVoice& voice) {
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
  add(has_task(Task::brush_out), Phrase::tick_brush_out);
  add(has(Stage::bath), Phrase::tick_bath);
  add(has(Stage::nails), Phrase::tick_nails);
  add(has(Stage::dry), Phrase::tick_dry);
  add(has(Stage::clip), Phrase::tick_clip);
  add(has(Stage::scissor), Phrase::tick_scissor);
  add(has(Stage::finish), Phrase::tick_finish);
  ticks.push_back(voice.words.say(Phrase::tick_check));
  return ticks;
}

std::vector<TextSpan> looks_text(const SheetInput& input, const SheetVoice& voice) {
  std::vector<TextSpan> spans;
  append(spans, "", {capitalised(voice.words.written(input.pet.breed)), Face::semibold});
  const std::string colour = voice.words.written(input.pet.colour);
  append(spans, comma(voice.words), {spans.empty() ? capitalised(colour) : colour});
  return spans;
}

std::vector<TextSpan> facts_text(const SheetInput& input, const SheetVoice& voice) {
  // The dot stays with what is before it when a line breaks.
  constexpr std::string_view between = "\u00A0· ";
  std::vector<TextSpan> spans;
  append(spans, between, {voice.words.written(input.pet.sex)});
  if (input.pet.born && input.pet.born->value <= input.today) {
    append(spans, between, {age_text(input.pet, input.today, voice.words)});
  }
  if (const auto& weight = input.plan.health.weight) {
    append(spans, between, {shown(weight->weight, voice), Face::semibold});
  }
  return spans;
}
}  // namespace furnish
