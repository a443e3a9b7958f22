#pragma once

#include "base/date.h"
#include "model/salon.h"

namespace furnish {

/// True if the salon keeps that weekday closed.
bool closed_on(const Salon&, Date);
/// The same day, or the nearest before it on which the salon is open; the day itself if it never
/// is.
Date open_day(const Salon&, Date wanted);
}  // namespace furnish
