#pragma once

#include "model/salon.h"
#include "model/visit.h"
#include "spec/fields.h"

namespace furnish {

// The tables of a visit's file. Each reports its unknown keys.

CameIn read_came_in(Fields&);
std::vector<RegionState> read_went_out(Fields&);
Finding read_finding(Fields&);
Photo read_photo(Fields&, const Salon*);
Consent read_consent(Fields&);

/// What a file says of the work by its contents alone. A place, a product, minutes or a picture
/// after it were done; how the pet came in and what was found say nothing of it, nor does that it
/// was here. By nothing that is for staff alone, which would show on an owner's page.
Work work_said(const Visit&);
}  // namespace furnish
