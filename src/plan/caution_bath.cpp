#include <algorithm>

#include "base/text.h"
#include "plan/caution_rules.h"
#include "plan/clinical.h"
#include "plan/places.h"
#include "plan/unwanted.h"
#include "trade/coat.h"
#include "trade/dryer.h"
#include "trade/health.h"
#include "trade/phrases.h"

namespace furnish {
namespace {
/// Free words stand for brushing, unless they take it back ("no brushing").
bool brushed_before(const Pet& pet) {
  if (!pet.bath.before) return false;
  const std::string& words = pet.bath.before->value;
  return !denies(words, "brush") && !denies(words, "brushing") && !denies(words, "comb") &&
         !denies(words, "combing") && words != "nothing" && words != "none" && words != "no";
}

SourceSpan bath_span(const Pet& pet) {
  if (pet.bath.before) return pet.bath.before->span;
  return pet.bath.span.file == SourceSpan::no_file ? pet.span : pet.bath.span;
}

void find_water(const CautionInput& in, Found& found) {
  const Pet& pet = in.pet;
  if (pet.bath.none || brushed_before(pet)) return;
  std::vector<Place> matted;
  if (in.latest != nullptr) {
    const std::vector<Place> felted = felted_places(in.latest);
    for (const RegionState& state : in.latest->came_in.regions) {
      // Felt is clipped and never combed through: the rule about felt says so.
      std::optional<Place> combed = state.place;
      for (const Place felt : felted) {
        if (combed) combed = without(*combed, felt);
      }
      if (state.mats.value_or(0) > 0 && combed) matted.push_back(*combed);
    }
  }
  if (!matted.empty()) {
    std::ranges::sort(matted);
    Caution caution = make_caution(RuleId::mats_before_water, bath_span(pet),
                                   {{}, {matted, in.latest->date.value}});
    caution.places = matted;
    found.push_back(caution);
  }
  if (pet.coat && info(*pet.coat).brush_before_water) {
    found.push_back(make_caution(RuleId::prebrush, bath_span(pet)));
  }
}

std::vector<const ProductUse*> products(const Pet& pet) {
  std::vector<const ProductUse*> out;
  if (pet.bath.none) return out;
  if (pet.bath.shampoo) out.push_back(&*pet.bath.shampoo);
  if (pet.bath.conditioner) out.push_back(&*pet.bath.conditioner);
  for (const ProductUse& use : pet.bath.others) out.push_back(&use);
  return out;
}

void find_allergens(const Pet& pet, const ProductUse& use, Found& found) {
  const std::vector<std::string> named = unwanted_in(use.product, pet);
  if (named.empty()) return;
  found.push_back(
      make_caution(RuleId::allergen, use.span, {{}, {use.product.name, joined(named, ", ")}}));
}

void find_short_dwell(const ProductUse& use, Found& found) {
  if (!use.product.medicated || !use.dwell || use.product.unread) return;
  const std::chrono::seconds own = use.product.dwell.value_or(medicated_dwell);
  if (*use.dwell >= own) return;
  found.push_back(make_caution(RuleId::dwell_short, use.span,
                               {{}, {use.product.name, own, *use.dwell}},
                               {use.product.dwell ? "" : "no-label"}));
}

void find_old_mix(const CautionInput& in, const ProductUse& use, Found& found) {
  const Product& product = use.product;
  const bool diluted = !product.dilution || product.dilution->value.share() < 1;
  if (!product.mixed || !diluted || *product.mixed > in.today) return;
  const auto age = in.today - *product.mixed;
  if (age <= in.salon.mix_keeps) return;
  found.push_back(
      make_caution(RuleId::mix_age, product.span,
                   {{}, {product.name, *product.mixed, static_cast<int>(age.count())}}));
}

/// What is done by the lines about drying: both, unless one is ruled out; then what is planned in
/// its place. The head is spared where either spares it.
DryerWords dryer_used(const Pet& pet, const Drying& drying) {
  DryerWords both = read_dryer(pet.handling.dryer);
  if (pet.bath.dry) both = combined(both, read_dryer(pet.bath.dry->value));
  if (!drying.ruled_out) return both;
  DryerWords out = read_dryer(drying.words);
  out.head_spared = out.head_spared || both.head_spared;
  out.ears_spared = out.ears_spared || both.ears_spared;
  return out;
}

/// Where the words about the dryer stand that make `uses` true; the bath's before the handling's.
template <typename Uses>
SourceSpan dryer_span(const Pet& pet, const Drying& drying, Uses uses) {
  if (drying.ruled_out) return drying.span;
  if (pet.bath.dry && uses(read_dryer(pet.bath.dry->value))) return pet.bath.dry->span;
  return pet.handling.dryer_span;
}

void find_dryers(const CautionInput& in, Found& found) {
  const Pet& pet = in.pet;
  if (pet.bath.none) return;
  const DryerWords words = dryer_used(pet, in.drying);
  const auto force = [](const DryerWords& w) { return w.force; };
  const auto heat = [](const DryerWords& w) { return w.heated || w.cage; };
  if (words.force_on_head() || words.force_on_ears()) {
    found.push_back(make_caution(RuleId::dryer_face, dryer_span(pet, in.drying, force),
                                 {words.force_on_head() ? "head" : "ears"}));
  }
  if (heat(words)) {
    Caution caution = make_caution(RuleId::dryer_heat, dryer_span(pet, in.drying, heat));
    if (must_not_overheat(pet, in.health.age_group)) caution.signal = Signal::danger;
    found.push_back(caution);
  }
  const bool seizures = has_condition(pet, Condition::seizures);
  const bool heart = has_condition(pet, Condition::heart_disease);
  if (words.force && (seizures || heart)) {
    const Condition cause = seizures ? Condition::seizures : Condition::heart_disease;
    found.push_back(
        make_caution(RuleId::dryer_seizure, dryer_span(pet, in.drying, force), {{}, {cause}}));
  }
}
}  // namespace

void find_bath_cautions(const CautionInput& in, Found& found) {
  find_water(in, found);
  for (const ProductUse* const use : products(in.pet)) {
    find_allergens(in.pet, *use, found);
    find_short_dwell(*use, found);
    find_old_mix(in, *use, found);
  }
  find_dryers(in, found);
}
}  // namespace furnish
