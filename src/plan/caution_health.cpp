#include "plan/caution_rules.h"
#include "trade/health.h"
#include "trade/vet_words.h"

namespace furnish {
namespace {
void find_vaccinations(const CautionInput& in, Found& found) {
  for (const VaccinationState& state : in.health.vaccinations) {
    if (!state.required || state.status == VaccinationStatus::valid) continue;
    Saying what{"missing", {state.name}};
    if (state.status == VaccinationStatus::expired) {
      what = {"expired", {state.name, *state.until}};
    } else if (state.status == VaccinationStatus::not_yet) {
      what = {"not-yet", {state.name, *state.from}};
    }
    // A missing one is to be written into the pet's file.
    const bool missing = state.status == VaccinationStatus::missing;
    found.push_back(make_caution(RuleId::vaccination, missing ? in.pet.span : state.span, what));
  }
}

void find_weight_loss(const CautionInput& in, Found& found) {
  const Health& health = in.health;
  if (!health.weight) return;
  const bool since_last = health.since_last && health.since_last->loss;
  const bool since_highest = health.since_highest && health.since_highest->loss;
  if (!since_last && !since_highest) return;
  const WeightChange& change = since_highest ? *health.since_highest : *health.since_last;
  const Mass before = change.before.weight, now = health.weight->weight;
  Saying what{"undated", {-change.percent, before, now}};
  if (const auto on = change.before.on) what = {{}, {-change.percent, *on, before, now}};
  found.push_back(make_caution(RuleId::weight_loss, health.weight->span, what));
}

void find_age(const CautionInput& in, Found& found) {
  const Health& health = in.health;
  const std::string_view about = health.about ? "about" : "";
  if (health.age_group == AgeGroup::senior) {
    found.push_back(make_caution(RuleId::senior, in.pet.born->span, {about, {*health.years}}));
  } else if (health.age_group == AgeGroup::puppy) {
    found.push_back(make_caution(RuleId::puppy, in.pet.born->span, {about, {*health.months}}));
  }
}

void find_vet_work(const CautionInput& in, Found& found) {
  const auto look = [&](std::string_view words, SourceSpan span) {
    if (const auto task = veterinary_task(words)) {
      found.push_back(make_caution(RuleId::vet_work, span, {{}, {*task}}));
    }
  };
  const Pet& pet = in.pet;
  for (const FinishLine& line : pet.finish) look(line.words.value, line.span);
  for (const TrimPart& part : pet.trim) look(part.entry.note, part.entry.span);
  if (pet.bath.none) return;
  if (pet.bath.before) look(pet.bath.before->value, pet.bath.before->span);
  for (const ProductUse& use : pet.bath.others) look(use.product.name, use.span);
}
}  // namespace

void find_health_cautions(const CautionInput& in, Found& found) {
  find_vaccinations(in, found);
  find_weight_loss(in, found);
  find_age(in, found);
  find_vet_work(in, found);
}
}  // namespace furnish
