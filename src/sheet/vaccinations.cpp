#include "sheet/vaccinations.h"

#include <algorithm>

#include "base/text.h"
#include "sheet/terms.h"

namespace furnish {
namespace {
Phrase phrase_of(const VaccinationState& state) {
  switch (state.status) {
    case VaccinationStatus::valid:
      return Phrase::list_valid;
    case VaccinationStatus::not_yet:
      return Phrase::list_from;
    case VaccinationStatus::expired:
      return Phrase::list_expired;
    case VaccinationStatus::missing:
      break;
  }
  return Phrase::list_missing;
}
}  // namespace

std::optional<SheetRow> vaccinations_row(const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  const Words& words = voice.words;
  const auto day = [&](Date date) { return voice.locale.short_date(date); };
  SheetRow row{words.say(Phrase::label_vaccinations), {}, input.pet.span};
  const auto add = [&](const std::string& name, std::vector<std::string> facts, bool strong) {
    row.points.push_back(
        {{{capitalised(words.written(name)) + colon(words), Face::semibold},
          {sentence(joined(facts, comma(words))), strong ? Face::bold : Face::regular}},
         false});
  };
  const std::vector<VaccinationState>& states = input.plan.health.vaccinations;
  for (const VaccinationState& state : states) {
    if (!state.given && !state.required) continue;
    std::vector<std::string> facts;
    if (state.given) facts.push_back(day(*state.given));
    const std::optional<Date> bound =
        state.status == VaccinationStatus::not_yet ? state.from : state.until;
    const bool missing = state.status == VaccinationStatus::missing || !bound;
    if (!missing) {
      facts.push_back(words.say(phrase_of(state), {day(*bound)}));
    } else if (!state.given) {
      facts.push_back(words.say(Phrase::list_missing));
    }
    add(state.name, std::move(facts), state.status != VaccinationStatus::valid);
  }
  for (const Vaccination& one : input.pet.vaccinations) {
    const bool said = std::ranges::any_of(
        states, [&](const VaccinationState& state) { return state.name == one.name; });
    if (!said && one.given.value <= input.today) add(one.name, {day(one.given.value)}, false);
  }
  if (row.points.empty()) return std::nullopt;
  return row;
}
}  // namespace furnish
