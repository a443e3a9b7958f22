#include "plan/tool_rules.h"

#include <algorithm>
#include <array>
#include <string_view>

#include "plan/clinical.h"
#include "plan/places.h"
#include "trade/phrases.h"

namespace furnish {
namespace {
const Blade& ten() {
  static const Blade& blade = *find_blade("10");
  return blade;
}

bool folded_skin(const Pet& pet) {
  return has_condition(pet, Condition::wrinkles) || has_condition(pet, Condition::thin_skin);
}

bool says_tearing(std::string_view words) {
  static const PhraseList phrases(std::array<std::string_view, 5>{
      "skin tear", "tearing skin", "thin skin", "fragile skin", "skin rips"});
  return phrases.first_affirmed(words).has_value();
}

/// Against the lay the skin is pushed into folds, a shorter blade has no coat to glide on, a comb
/// in mats pulls. The pads have skin of their own.
bool thin_skin(const Tool& tool, Place place, const Pet& pet, const Visit* latest, Lay lay) {
  if (place.region == Region::pads || !tearing_skin(pet)) return false;
  if (std::holds_alternative<CombOver>(tool)) return mats_at(latest, place) > 0;
  const auto* const clip = std::get_if<Clip>(&tool);
  return clip != nullptr && (lay == Lay::against || clip->blade->length() < ten().length());
}

bool sanitary_blade(const Tool& tool, Place place) {
  if (place.region != Region::sanitary) return false;
  if (const auto* const clip = std::get_if<Clip>(&tool)) return clip->blade != &ten();
  return std::holds_alternative<CombOver>(tool);
}

bool pads_blade(const Tool& tool, Place place) {
  if (place.region != Region::pads) return false;
  if (std::holds_alternative<CombOver>(tool)) return true;
  const auto* const clip = std::get_if<Clip>(&tool);
  return clip != nullptr &&
         (clip->blade->length() > ten().length() || clip->blade->teeth == Teeth::skip);
}

bool close_blade(const Tool& tool, Place place) {
  const auto* const clip = std::get_if<Clip>(&tool);
  return clip != nullptr && skin_close(*clip->blade) && place.region != Region::pads;
}

bool skip_tooth(const Tool& tool, Place place, const Pet& pet) {
  const auto* const clip = std::get_if<Clip>(&tool);
  return clip != nullptr && clip->blade->teeth == Teeth::skip &&
         (info(place.region).thin_skin || folded_skin(pet));
}

bool double_coat_short(const Tool& tool, std::optional<Length> left, Place place, const Pet& pet) {
  return cuts(tool) && left && too_short_for_double_coat(pet, place.region, *left);
}
}  // namespace

std::vector<RuleId> tool_rules(const Tool& tool, std::optional<Length> left, Place place,
                               const Pet& pet, const Visit* latest, Lay lay) {
  const auto* const comb = std::get_if<CombOver>(&tool);
  const bool shears = std::holds_alternative<Scissor>(tool);
  const bool clipper = comb != nullptr || std::holds_alternative<Clip>(tool);
  const bool ears = place.region == Region::ears;
  const bool mats = mats_at(latest, place) > 0;
  std::vector<RuleId> out;
  const auto add = [&](RuleId id, bool applies) {
    if (applies) out.push_back(id);
  };
  add(RuleId::sanitary_blade, sanitary_blade(tool, place));
  add(RuleId::sanitary_shears, shears && place.region == Region::sanitary);
  add(RuleId::pads_blade, pads_blade(tool, place));
  add(RuleId::close_blade, close_blade(tool, place));
  add(RuleId::skip_tooth, skip_tooth(tool, place, pet));
  add(RuleId::comb_base, comb != nullptr && !guard_comb_base(*comb->base));
  add(RuleId::comb_on_mats, comb != nullptr && mats);
  add(RuleId::double_coat_short, double_coat_short(tool, left, place, pet));
  add(RuleId::ear_mats, ears && mats && std::holds_alternative<Clip>(tool));
  add(RuleId::ear_edge, ears && (shears || clipper));
  add(RuleId::pads, place.region == Region::pads && (shears || clipper));
  add(RuleId::thin_skin, thin_skin(tool, place, pet, latest, lay));
  return out;
}

bool tearing_skin(const Pet& pet) {
  return folded_skin(pet) || says_tearing(pet.health_notes) ||
         std::ranges::any_of(pet.alerts, [](const Alert& one) {
           return says_tearing(one.text.value) || says_tearing(one.action.value);
         });
}

bool forbids(RuleId id) {
  return !is_standing(rule(id)) && id != RuleId::ear_mats;
}

bool forbidden(const Tool& tool, std::optional<Length> left, Place place, const Pet& pet,
               const Visit* latest) {
  const bool short_is_accepted = std::ranges::any_of(
      pet.accepted, [](const Acceptance& a) { return a.rule.value == RuleId::double_coat_short; });
  return std::ranges::any_of(tool_rules(tool, left, place, pet, latest), [&](RuleId id) {
    return forbids(id) && !(id == RuleId::double_coat_short && short_is_accepted);
  });
}
}  // namespace furnish
