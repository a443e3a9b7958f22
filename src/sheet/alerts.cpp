#include "sheet/alerts.h"

#include <algorithm>
#include <array>

#include "base/text.h"
#include "page/stack.h"
#include "sheet/caution_words.h"
#include "sheet/own_words.h"
#include "sheet/parts.h"
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
}  // namespace

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

std::vector<AlertEntry> alert_entries(const SheetDesk& desk, CautionScope scope) {
  const auto& [input, voice] = desk;
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
  // In another language than the page's, statement and action stand under what can be read.
  const auto add_apart = [&](const Alert& alert, const OwnWords& text, const OwnWords& what_to_do,
                             const std::string& action) {
    const std::string& language = text.language.empty() ? what_to_do.language : text.language;
    std::vector<std::string> readable;
    if (text.language.empty()) readable.push_back(sentence(text.text));
    if (!action.empty()) readable.push_back(action);
    readable.push_back(lead_in({}, language, voice));
    add(alert.level, alert.text.value, {}, alert.span);
    AlertEntry& entry = ranked.back().entry;
    entry.statement = readable.front();
    entry.action = joined(std::span(readable).subspan(1), " ");
    std::vector<std::string> apart;
    if (!text.language.empty()) apart.push_back(sentence(text.text));
    if (!what_to_do.language.empty()) apart.push_back(sentence(what_to_do.text));
    entry.apart = stand_apart(apart, language, voice);
  };
  for (const Alert& alert : input.pet.alerts) {
    const OwnWords text = own_words(alert.text, voice), what_to_do = own_words(alert.action, voice);
    std::string action = what_to_do.language.empty() ? sentence(what_to_do.text) : std::string();
    std::vector<Place> avoid;
    for (const auto& place : alert.avoid) avoid.push_back(place.value);
    if (!avoid.empty()) {
      if (!action.empty()) action += ' ';
      action += voice.words.say(Phrase::no_tool_on, {places_text(avoid, voice)});
    }
    if (text.language.empty() && what_to_do.language.empty()) {
      add(alert.level, text.text, std::move(action), alert.span);
    } else {
      add_apart(alert, text, what_to_do, std::move(action));
    }
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

BlockPtr no_alerts(const SheetDesk& desk, const std::shared_ptr<LabelColumn>& labels) {
  const Words& words = desk.voice.words;
  std::vector<LabelRow> none{
      {words.say(Phrase::label_alerts), paragraph(words.say(Phrase::no_alerts))}};
  return column(
      {std::make_shared<Rule>(rule_name), std::make_shared<Rows>(std::move(none), labels)});
}

BlockPtr no_alerts_run_in(const SheetDesk& desk, std::string_view after) {
  const Words& words = desk.voice.words;
  return column({std::make_shared<Rule>(rule_name),
                 paragraph({{words.say(Phrase::label_alerts) + std::string(after), Face::semibold},
                            {words.say(Phrase::no_alerts)}})});
}
}  // namespace furnish
