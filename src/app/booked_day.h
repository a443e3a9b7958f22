#pragma once

#include <vector>

#include "app/sheet_maker.h"
#include "plan/day_checks.h"

namespace furnish {

/// What cannot go as the case's own day is booked, of what is about its pet; and every pet of that
/// day that is not there, for nobody else has a sheet on which it could be said. Of the other pets
/// the time is worked out only where it decides: where the same groomer has them before this one.
/// What their own files say of themselves is not told here.
std::vector<DayWarning> day_warnings_about(const Case&, const ReadContext&);
}  // namespace furnish
