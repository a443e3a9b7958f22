#include "plan/clinical.h"

#include <algorithm>

namespace furnish {

bool has_condition(const Pet& pet, Condition wanted) {
  return std::ranges::any_of(
      pet.conditions, [&](const Located<Condition>& known) { return known.value == wanted; });
}

bool short_of_breath(const Pet& pet, AgeGroup age) {
  return pet.build.nose == NoseLength::short_nose || age == AgeGroup::senior ||
         has_condition(pet, Condition::heart_disease) ||
         has_condition(pet, Condition::collapsing_trachea);
}

bool must_not_overheat(const Pet& pet, AgeGroup age) {
  return short_of_breath(pet, age) || age == AgeGroup::puppy;
}

bool too_short_for_double_coat(const Pet& pet, Region region, Length left) {
  constexpr Length shortest = Length::micrometres(std::int64_t{double_coat_shortest_mm} * 1000);
  return pet.coat == Coat::double_coat && in_group(region, Group::body) && left < shortest;
}
}  // namespace furnish
