#include "plan/staff_only.h"

#include <catch2/catch.hpp>

using namespace furnish;

namespace {
Alert alert(const char* text, Audience audience = Audience::staff) {
  Alert out;
  out.text = text;
  out.audience = audience;
  return out;
}
}  // namespace

TEST_CASE("what an owner should know at home and is for staff only is seen") {
  Pet pet;
  pet.alerts = {alert("Snaps when a foot is held."), alert("Had a seizure in May"),
                alert("Never bites."), alert("Shy of dryers"), alert("Takes heart tablets.")};
  OpenFinding lump;
  lump.what = "lump, pea-sized";
  const auto seen = staff_only(pet, std::span(&lump, 1));
  REQUIRE(seen.size() == 4);
  CHECK(seen[0].matter == HomeMatter::biting);
  CHECK(seen[1].matter == HomeMatter::seizures);
  CHECK(seen[2].matter == HomeMatter::medicine);
  CHECK(seen[3].what == StaffOnly::What::finding);
  CHECK(to_text(seen[3].matter) == "a wound or a lump");
}

TEST_CASE("what something for everyone speaks of as well is not") {
  Pet pet;
  pet.alerts = {alert("Bites when her ears are touched."), alert("May snap.", Audience::everyone)};
  CHECK(staff_only(pet, {}).empty());
}
