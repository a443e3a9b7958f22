#include "model/for_everyone.h"

#include <utility>

namespace furnish {
namespace {
/// What says for itself whom it is for.
template <typename T>
void keep_for_everyone(std::vector<T>& all) {
  std::erase_if(all, [](const T& one) { return one.audience != Audience::everyone; });
}

void drop_for_staff(FreeText& text) {
  if (text.audience != Audience::everyone) text = {};
}
/// True if nothing but a note was said of the place, and that is gone: the place itself would tell
/// that there was one.
bool says_nothing(const RegionState& state) {
  return !state.mats && !state.encircling && !state.length && state.soil.value.empty() &&
         state.shedding.value.empty() && state.skin.value.empty() && state.note.value.empty();
}
}  // namespace

Pet for_everyone(Pet pet) {
  // A file's name may say things.
  pet.photo.clear();
  pet.photo_span = {};
  Owner owner;
  owner.name = std::move(pet.owner.name);
  pet.owner = std::move(owner);
  keep_for_everyone(pet.alerts);
  pet.handling = {};
  pet.health_notes.clear();
  pet.accepted.clear();
  return pet;
}

Visit for_everyone(Visit visit) {
  visit.came_in.behaviour = {};
  visit.came_in.helped = {};
  visit.came_in.well.clear();
  for (auto* const states : {&visit.came_in.regions, &visit.went_out}) {
    for (RegionState& state : *states) drop_for_staff(state.note);
    std::erase_if(*states, says_nothing);
  }
  for (PlacedEntry& rule : visit.done) {
    drop_for_staff(rule.entry.why);
    rule.entry.note.clear();
  }
  keep_for_everyone(visit.findings);
  for (Photo& photo : visit.photos) photo.file.value.clear();
  return visit;
}
}  // namespace furnish
