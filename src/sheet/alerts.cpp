#include "sheet/alerts.h"

#include <algorithm>
#include <array>

#include "base/said_in.h"
#include "base/text.h"
#include "page/stack.h"
#include "plan/matters.h"
#include "sheet/caution_words.h"
#include "sheet/own_words.h"
#include "sheet/parts.h"
#include "sheet/pieces.h"
#include "sheet/terms.h"
#include "sheet/told_words.h"
#include "sheet/trim_lines.h"
#include "trade/phrases.h"

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

std::string signal_word(Signal signal, const Words& words) {
  return words.say(signal_phrase(signal));
}

std::string salon_unread_text(const std::vector<std::string>& parts, const Words& words) {
  if (parts.empty()) return {};
  return words.say(Phrase::salon_unread, {joined(parts, ", ")});
}

bool belongs_on_card(const Caution& caution) {
  if (caution.signal <= Signal::warning) return true;
  switch (caution.rule) {
    case RuleId::comb_on_mats:
    case RuleId::mats_before_water:
    case RuleId::felted_coat:
    case RuleId::dryer_face:
    case RuleId::vaccination:
    case RuleId::weight_loss:
    case RuleId::senior:
    case RuleId::puppy:
    case RuleId::vet_work:
    case RuleId::found_there:
    case RuleId::noise:
      return true;
    default:
      return false;
  }
}

namespace {
/// The cautions that stand among the alerts, one row a matter.
std::vector<Matter> told(const Plan& plan, CautionScope scope) {
  if (scope == CautionScope::none) return {};
  std::vector<Caution> out;
  std::ranges::copy_if(plan.cautions, std::back_inserter(out), [&](const Caution& caution) {
    return !caution.accepted && (scope == CautionScope::all || belongs_on_card(caution));
  });
  return matters(out);
}

/// True if the alert is what makes the matter one: it keeps every tool from there.
bool about(const Alert& alert, const Matter& matter) {
  const Caution& gravest = matter.cautions.front();
  return gravest.rule == RuleId::avoid_region &&
         std::ranges::all_of(gravest.places, [&](Place place) {
           return std::ranges::any_of(alert.avoid, [&](const Located<Place>& avoided) {
             return meets(avoided.value, place);
           });
         });
}

/// Those that the words of the alert do not name.
std::vector<std::string> unsaid_allergens(const Alert& alert, const SheetVoice& voice) {
  std::vector<std::string> out;
  for (const Located<std::string>& one : alert.allergens) {
    const bool said =
        mentions(alert.text.value, one.value) || mentions(alert.action.value, one.value);
    if (!said) out.push_back(voice.words.written(one.value));
  }
  return out;
}

std::string sentences(const std::vector<CautionText>& texts, const SheetVoice& voice) {
  std::vector<std::string> out;
  for (const CautionText& text : texts) out.push_back(sentence(caution_text(text, voice)));
  return joined(out, " ");
}

/// Each hazard with what to do about it right after it: the last of that is the action, all before
/// it goes into the statement.
struct Spoken {
  std::string statement, action;
};
void join(std::string& to, const std::string& more) {
  if (!to.empty() && !more.empty()) to += ' ';
  to += more;
}
Spoken spoken(const std::vector<Advice>& all, const SheetVoice& voice) {
  Spoken out;
  for (const Advice& one : all) {
    join(out.statement, out.action);
    join(out.statement, sentences(one.what, voice));
    out.action = sentences({one.instead}, voice);
  }
  return out;
}

/// "Visit of 8 Dec: bit at the left rear foot." Its date does not break, nor end a sentence.
std::string bite_text(const ToldBite& told, const SheetDesk& desk, const Words& words) {
  const std::string date =
      without_breaks(desk.voice.locale.short_day(told.visit.date.value, desk.input.today));
  const std::vector<std::string_view> all = sentences_in(told.text.value);
  const auto one = std::ranges::find_if(
      all, [&](std::string_view sentence) { return tells_of_bite(sentence, words); });
  const std::string said = one == all.end() ? told.text.value : std::string(*one);
  return desk.voice.words.say(Phrase::note_visit_of, {date}) + colon(desk.voice.words) +
         salons_words(said, desk.voice);
}

/// Statements of danger and warning are for whoever passes; cautions and notices for who reads on.
Role role(Signal signal) {
  return signal <= Signal::warning ? Role::alert : Role::body;
}
}  // namespace

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
                       signal_word(signal, voice.words),
                       sentence(what),
                       std::move(action),
                       {without_languages(what), span},
                       role(signal)}});
  };
  // In another language than the page's, statement and action stand under what can be read.
  const auto add_apart = [&](const Alert& alert, Signal level, const OwnWords& text,
                             const OwnWords& what_to_do, const std::string& action) {
    const std::string& language = text.language.empty() ? what_to_do.language : text.language;
    std::vector<std::string> readable;
    if (text.language.empty()) readable.push_back(sentence(text.text));
    if (!action.empty()) readable.push_back(action);
    readable.push_back(lead_in({}, language, voice));
    add(level, alert.text.value, {}, alert.span);
    AlertEntry& entry = ranked.back().entry;
    entry.statement = readable.front();
    entry.action = joined(std::span(readable).subspan(1), " ");
    std::vector<std::string> apart;
    if (!text.language.empty()) apart.push_back(sentence(text.text));
    if (!what_to_do.language.empty()) apart.push_back(sentence(what_to_do.text));
    entry.apart = stand_apart(apart, language, voice);
  };
  // What it found may be what counts, and nobody at the table can know.
  if (!input.all_visits) {
    add(Signal::caution, voice.words.say(Phrase::day_visit_unread), {}, {});
  }
  if (scope != CautionScope::none && !input.plan.salon_unread.empty()) {
    add(Signal::caution, salon_unread_text(input.plan.salon_unread, voice.words), {}, {});
  }
  // Who opens the kennel a year later reads no visit.
  const Words& salons = voice.salon_words != nullptr ? *voice.salon_words : voice.words;
  if (scope != CautionScope::none) {
    if (const auto bite = untold_bite(input.pet, input.told, salons, input.today)) {
      add(Signal::danger, bite_text(*bite, desk, salons), {}, bite->text.span);
    }
  }
  std::vector<Matter> computed = told(input.plan, scope);
  for (const Alert& alert : input.pet.alerts) {
    const OwnWords text = own_words(alert.text, voice), what_to_do = own_words(alert.action, voice);
    std::string action = what_to_do.language.empty() ? sentence(what_to_do.text) : std::string();
    std::vector<Place> avoid;
    for (const auto& place : alert.avoid) avoid.push_back(place.value);
    if (!avoid.empty()) {
      if (!action.empty()) action += ' ';
      action += voice.words.say(Phrase::no_tool_on, {places_text(avoid, voice)});
    }
    if (std::vector<std::string> named = unsaid_allergens(alert, voice); !named.empty()) {
      if (!action.empty()) action += ' ';
      action += voice.words.say(Phrase::nothing_with, {voice.locale.either(named)});
    }
    Signal level = alert.level;
    std::erase_if(computed, [&](const Matter& matter) {
      if (!about(alert, matter)) return false;
      level = std::min(level, matter.gravest());
      std::vector<Advice> more = matter.advice;
      for (Advice& one : more) {  // that no tool goes there is said
        std::erase_if(one.what, [&](const CautionText& hazard) {
          return hazard.key == matter.cautions.front().what.key;
        });
      }
      const Spoken said = spoken(more, voice);
      join(action, said.statement);
      join(action, said.action);
      return true;
    });
    if (text.language.empty() && what_to_do.language.empty()) {
      add(level, text.text, std::move(action), alert.span);
    } else {
      add_apart(alert, level, text, what_to_do, action);
    }
  }
  for (const Matter& matter : computed) {
    Spoken said = spoken(matter.advice, voice);
    add(matter.gravest(), said.statement, std::move(said.action), matter.cautions.front().span);
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
