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
}  // namespace furnish
