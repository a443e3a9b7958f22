#pragma once

#include "model/pet.h"
#include "model/salon.h"
#include "spec/fields.h"

namespace furnish {

// The tables of a pet's file that need nothing but themselves. Each reports its unknown keys.

void read_identity(Fields& pet_table, const Salon*, Pet&);
Owner read_owner(Fields&);
Alert read_alert(Fields&);
Handling read_handling(Fields&);
Build read_build(Fields&);
std::vector<Vaccination> read_vaccinations(Fields&, const Salon*);
Preferences read_preferences(Fields&);
Acceptance read_acceptance(Fields&);
}  // namespace furnish
