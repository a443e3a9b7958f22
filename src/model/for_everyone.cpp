#include "model/for_everyone.h"

#include <utility>

namespace furnish {
namespace {
/// What says for itself whom it is for.
template <typename T>
void keep_for_everyone(std::vector<T>& all) {
  std::erase_if(all, [](const T& one) { return one.audience != Audience::everyone; });
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
  visit.came_in.behaviour.clear();
  visit.came_in.helped.clear();
  visit.came_in.well.clear();
  keep_for_everyone(visit.findings);
  for (Photo& photo : visit.photos) photo.file.value.clear();
  return visit;
}
}  // namespace furnish
