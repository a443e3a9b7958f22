#include "sheet/style_words.h"

#include <algorithm>
#include <iterator>

#include "base/text.h"
#include "plan/clinical.h"
#include "sheet/accepted.h"
#include "sheet/last_time.h"
#include "sheet/own_words.h"
#include "sheet/pieces.h"
#include "sheet/shown.h"
#include "sheet/terms.h"
#include "sheet/who.h"

namespace furnish {
namespace {
std::string quoted(const std::vector<std::string>& wishes, const SheetVoice& voice) {
  std::vector<std::string> out;
  for (const std::string& wish : wishes) {
    out.push_back(voice.words.say(Phrase::quoted, {capitalised(salons_words(wish, voice))}));
  }
  return joined(out, " ");
}

/// The one answer to mats that fits this pet: skin that tears is a vet's; no blade under a mat
/// where the coat may not come back, unless its owner agreed to it short, or where the pet's lines
/// rule it out.
Phrase mats_phrase(const SheetInput& input) {
  const Pet& pet = input.pet;
  if (input.plan.tearing_skin) return Phrase::if_mats_skin;
  const bool agreed_short = std::ranges::any_of(pet.accepted, [](const Acceptance& one) {
    return one.rule.value == RuleId::double_coat_short;
  });
  const std::vector<RuledOut> rules = ruled_out(pet);
  const bool no_blade = ruling_out(rules, Clip{find_blade("10")}, {Region::back, Side::both});
  const bool kept = *pet.coat == Coat::double_coat && !agreed_short;
  return kept || no_blade ? Phrase::if_mats_double : Phrase::if_mats;
}
}  // namespace

std::vector<std::vector<TextSpan>> style_facts(const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  const Pet& pet = input.pet;
  std::vector<std::vector<TextSpan>> lines;
  const auto join = [](std::vector<TextSpan>& line, std::vector<TextSpan> more) {
    if (!line.empty() && !more.empty()) line.push_back({"\u00A0· "});
    std::ranges::move(more, std::back_inserter(line));
  };
  std::vector<TextSpan> looks = looks_text(desk), facts = facts_text(desk);
  if (pet.coat) join(looks, {{coat_name(*pet.coat, voice.words)}});
  // Where somebody wrote what the style looks like, its name heads that.
  if (pet.style && pet.style->looks.empty()) {
    join(facts, {{salons_words(pet.style->name, voice), Face::bold}});
  }
  if (!looks.empty()) lines.push_back(std::move(looks));
  if (!facts.empty()) lines.push_back(std::move(facts));
  return lines;
}

std::optional<SheetRow> style_looks(const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  if (!input.pet.style || input.pet.style->looks.empty()) return std::nullopt;
  const Style& style = *input.pet.style;
  return SheetRow{
      salons_words(style.name, voice), {{sentence(salons_words(style.looks, voice))}}, style.span};
}

std::vector<SheetRow> style_handling(const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  const Words& words = voice.words;
  const Handling& handling = input.pet.handling;
  std::vector<SheetRow> rows;
  const auto add = [&](Phrase label, Sentences text) {
    if (!text.empty())
      rows.push_back({without_breaks(words.say(label)), text.take(), input.pet.span});
  };
  const auto said = [&](const std::string& text) {
    Sentences out(words);
    out.add(salons_words(text, voice));
    return out;
  };
  add(Phrase::hold, said(handling.hold));
  add(Phrase::lift, said(handling.lift));
  Sentences dry(words);
  dry.add(drying_text(desk));
  dry.add_strong(sentence(dryer_text(desk)));
  add(Phrase::label_dry, std::move(dry));
  add(Phrase::stop, said(handling.stop));
  if (handling.rest_every) {
    // The label of it is its first word.
    const std::string rest = words.say(Phrase::rest_every, {shown(*handling.rest_every, voice)});
    rows.push_back({{}, {{sentence(rest), Face::semibold}}, input.pet.span});
  }
  return rows;
}

std::vector<SheetRow> style_who(const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  const Pet& pet = input.pet;
  std::vector<SheetRow> notes;
  const auto known = [&](std::optional<SheetRow> row) {
    if (row) notes.push_back(*std::move(row));
  };
  known(look_again_row(desk, Numbers::yes));
  std::string text = conditions_text(desk);
  if (!text.empty()) text += ". ";
  text += pet.health_notes.empty() ? "" : sentence(salons_words(pet.health_notes, voice));
  if (!text.empty()) notes.push_back({voice.words.say(Phrase::who_health), {{text}}, pet.span});
  known(accepted_row(desk, CautionScope::all));

  std::vector<std::string> wishes, dislikes;
  if (!pet.preferences.likes.empty()) wishes.push_back(quoted(pet.preferences.likes, voice));
  for (const std::string& one : pet.preferences.dislikes) {
    dislikes.push_back(salons_words(one, voice));
  }
  std::vector<std::string> limits;
  for (const KeepUnder& limit : pet.preferences.keep_under) {
    limits.push_back(voice.words.say(
        Phrase::keep_short, {place_name(limit.place, voice.words), shown(limit.length, voice)}));
  }
  const std::string unwanted = joined(dislikes, comma(voice.words));
  // Under the label of what is wanted it says so itself.
  if (!dislikes.empty() && !(wishes.empty() && limits.empty())) {
    wishes.push_back(voice.words.say(Phrase::not_wanted, {unwanted}));
  } else if (!dislikes.empty()) {
    notes.push_back({voice.words.say(Phrase::label_not_wanted), {{sentence(unwanted)}}, pet.span});
  }
  std::ranges::move(limits, std::back_inserter(wishes));
  if (!wishes.empty()) {
    notes.push_back({voice.words.say(Phrase::who_owner), {{joined(wishes, " ")}}, pet.span});
  }
  return notes;
}

std::vector<SheetRow> style_visits(const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  const Words& words = voice.words;
  constexpr std::size_t most_visits = 3;
  std::vector<SheetRow> rows;
  std::optional<SheetRow> newest = last_time_row(desk);
  if (newest) newest->label.clear();  // under a head that says so
  for (auto at = input.visits.rbegin(); at != input.visits.rend() && rows.size() < most_visits;
       ++at) {
    const Visit& visit = **at;
    if (newest) {
      rows.push_back(*std::exchange(newest, std::nullopt));
      // It is of this one, unless a later one was not done.
      if (input.plan.visit_before->date <= visit.date.value) continue;
    }
    std::vector<std::string> facts{voice.locale.short_day(visit.date.value, input.today)};
    if (!visit.groomer.empty()) facts.push_back(words.written(visit.groomer));
    if (visit.minutes) facts.push_back(shown(*visit.minutes, voice));
    if (visit.weight) facts.push_back(shown(visit.weight->value, voice));
    std::string text = sentence(joined(facts, comma(words)));
    const std::string behaviour = salons_words(visit.came_in.behaviour, voice);
    if (!behaviour.empty()) text += " " + sentence(behaviour);
    rows.push_back({{}, {{std::move(text)}}, visit.date.span});
  }
  if (newest) rows.push_back(*std::move(newest));
  return rows;
}

std::vector<SheetRow> style_what_if(const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  const Pet& pet = input.pet;
  const Words& words = voice.words;
  std::vector<SheetRow> notes;
  const auto add = [&](Phrase head, std::string text) {
    notes.push_back({words.say(head), {{std::move(text)}}, pet.span});
  };
  if (!pet.handling.stop.empty()) {
    notes.push_back({capitalised(salons_words(pet.handling.stop, voice)),
                     {{words.say(Phrase::if_stop)}},
                     pet.span});
  }
  if (has_condition(pet, Condition::seizures)) add(Phrase::if_fit_head, words.say(Phrase::if_fit));
  if (short_of_breath(pet, input.plan.health.age_group)) {
    add(Phrase::if_breath_head, words.say(Phrase::if_breath));
  }
  const bool mats = pet.coat && *pet.coat != Coat::smooth && *pet.coat != Coat::hairless;
  if (mats) add(Phrase::if_mats_head, words.say(mats_phrase(input)));
  add(Phrase::if_wound_head, words.say(Phrase::if_wound));
  add(Phrase::if_nick_head, words.say(Phrase::if_nick));
  add(Phrase::if_refuses_head, words.say(Phrase::if_refuses));
  add(Phrase::if_unsure_head, words.say(Phrase::if_unsure));
  std::string ask;
  if (input.latest != nullptr && !input.latest->groomer.empty()) {
    const auto& before = input.plan.visit_before;
    // Where the page says when that was, the name is enough.
    const bool said = before && before->date == input.latest->date.value && last_time_row(desk);
    ask = said ? sentence(input.latest->groomer)
               : words.say(Phrase::ask_groomer,
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
}  // namespace furnish
