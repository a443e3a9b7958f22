#pragma once

#include "model/pet.h"
#include "model/visit.h"

namespace furnish {

// What is for staff is taken out here, before anything for everyone is made: an owner's page, a
// file inside a page for anyone, a code on it. What such a page is not given, it cannot tell. The
// salon's own file has no field for staff alone.

/// The pet without what model/audience.h calls staff: where the photo lies, of the owner all but
/// the name (phone, email, address, language, who collects, and the vet, whom an owner's own page
/// is given beside), alerts that are not for everyone with all they say, handling, the notes on
/// health, accepted rules. Conditions, vaccinations, bath, trim with its notes, finish and
/// preferences are for everyone.
Pet for_everyone(Pet);
/// The visit without behaviour and what helped, what was looked at and found well, findings,
/// reasons and notes that are not for everyone, and where photos lie: the photos are still there,
/// without their files' names.
Visit for_everyone(Visit);
}  // namespace furnish
