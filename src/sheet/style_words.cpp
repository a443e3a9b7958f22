#include <algorithm>

#include "base/text.h"
#include "plan/clinical.h"
#include "sheet/card_rows.h"
#include "sheet/shown.h"
#include "sheet/style_parts.h"
#include "sheet/terms.h"

namespace furnish {
namespace {
std::string quoted(const std::vector<std::string>& wishes, const SheetVoice& voice) {
  std::vector<std::string> out;
  for (const std::string& wish : wishes) {
    out.push_back(voice.words.say(Phrase::quoted, {capitalised(voice.words.written(wish))}));
  }
  return joined(out, " ");
}
}  // namespace

std::vector<AlertEntry> style_alerts(const SheetInput& input, const SheetVoice& voice) {
  return alert_entries(input, voice, CautionScope::all);
}

std::vector<std::vector<TextSpan>> style_facts(const SheetInput& input, const SheetVoice& voice) {
  const Pet& pet = input.pet;
  std::vector<std::vector<TextSpan>> lines;
  const auto join = [](std::vector<TextSpan>& line, std::vector<TextSpan> more) {
    if (!line.empty() && !more.empty()) line.push_back({"\u00A0· "});
    std::ranges::move(more, std::back_inserter(line));
  };
  std::vector<TextSpan> looks = looks_text(input, voice), facts = facts_text(input, voice);
  if (pet.coat) {
    join(looks, {{voice.words.say(Phrase::coat_of, {coat_name(*pet.coat, voice.words)})}});
  }
  if (pet.style) join(facts, {{voice.words.written(pet.style->name), Face::bold}});
  if (!looks.empty()) lines.push_back(std::move(looks));
  if (!facts.empty()) lines.push_back(std::move(facts));
  return lines;
}

std::vector<StyleNote> style_who(const SheetInput& input, const SheetVoice& voice) {
  const Pet& pet = input.pet;
  std::vector<StyleNote> notes;
  std::vector<std::string> health;
  for (const auto& condition : pet.conditions)
    health.push_back(condition_name(condition.value, voice.words));
  std::string text = capitalised(joined(health, comma(voice.words)));
  if (!text.empty()) text += ". ";
  text += pet.health_notes.empty() ? "" : sentence(voice.words.written(pet.health_notes));
  if (!text.empty()) notes.push_back({voice.words.say(Phrase::who_health), {{text}}, pet.span});

  std::vector<std::string> wishes;
  if (!pet.preferences.likes.empty()) wishes.push_back(quoted(pet.preferences.likes, voice));
  if (!pet.preferences.dislikes.empty()) {
    std::vector<std::string> dislikes;
    for (const std::string& one : pet.preferences.dislikes) {
      dislikes.push_back(voice.words.written(one));
    }
    wishes.push_back(voice.words.say(Phrase::not_wanted, {joined(dislikes, comma(voice.words))}));
  }
  for (const KeepUnder& limit : pet.preferences.keep_under) {
    wishes.push_back(voice.words.say(
        Phrase::keep_short, {place_name(limit.place, voice.words), shown(limit.length, voice)}));
  }
  if (!wishes.empty()) {
    notes.push_back({voice.words.say(Phrase::who_owner), {{joined(wishes, " ")}}, pet.span});
  }
  return notes;
}

std::vector<StyleNote> style_what_if(const SheetInput& input, const SheetVoice& voice,
                                     WhatIf scope) {
  const Pet& pet = input.pet;
  const Words& words = voice.words;
  std::vector<StyleNote> notes;
  const auto add = [&](Phrase head, std::string text) {
    notes.push_back({words.say(head), {{std::move(text)}}, pet.span});
  };
  if (!pet.handling.stop.empty()) {
    notes.push_back(
        {capitalised(words.written(pet.handling.stop)), {{words.say(Phrase::if_stop)}}, pet.span});
  }
  if (has_condition(pet, Condition::seizures)) add(Phrase::if_fit_head, words.say(Phrase::if_fit));
  if (short_of_breath(pet, input.plan.health.age_group)) {
    add(Phrase::if_breath_head, words.say(Phrase::if_breath));
  }
  const bool mats = pet.coat && *pet.coat != Coat::smooth && *pet.coat != Coat::hairless;
  if (mats) {
    std::string text = words.say(Phrase::if_mats);
    if (*pet.coat == Coat::double_coat) text = words.say(Phrase::if_mats_double) + " " + text;
    add(Phrase::if_mats_head, std::move(text));
  }
  add(Phrase::if_wound_head, words.say(Phrase::if_wound));
  if (scope == WhatIf::general) {
    add(Phrase::if_nick_head, words.say(Phrase::if_nick));
    add(Phrase::if_refuses_head, words.say(Phrase::if_refuses));
    add(Phrase::if_unsure_head, words.say(Phrase::if_unsure));
  }
  std::string ask;
  if (input.latest != nullptr && !input.latest->groomer.empty()) {
    ask = words.say(Phrase::ask_groomer,
                    {input.latest->groomer, pet.name.value,
                     voice.locale.day_and_month(input.latest->date.value, input.today)});
  }
  if (!pet.owner.name.empty()) {
    if (!ask.empty()) ask += ' ';
    ask += words.say(Phrase::ask_owner, {pet.owner.name});
  }
  if (!ask.empty()) add(Phrase::ask_head, std::move(ask));
  return notes;
}

std::vector<std::string> style_questions(const std::vector<StyleRow>& rows, const SheetInput& input,
                                         const SheetVoice& voice) {
  std::vector<std::string> questions;
  const bool warned = !style_alerts(input, voice).empty();
  if (warned) questions.push_back(voice.words.say(Phrase::q_stop));
  const bool differs = std::ranges::any_of(rows, [](const StyleRow& row) { return row.differs; });
  questions.push_back(differs && input.pet.style ? voice.words.say(Phrase::q_differs)
                                                 : voice.words.say(Phrase::q_lengths));
  const bool finished =
      std::ranges::any_of(rows, [](const StyleRow& row) { return !row.finish.empty(); });
  if (finished) questions.push_back(voice.words.say(Phrase::q_finish));
  return questions;
}
}  // namespace furnish
