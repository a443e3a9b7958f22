#pragma once

#include <optional>
#include <string>

#include "model/visit.h"
#include "spec/context.h"

namespace furnish {

/// days/YYYY-MM-DD.toml; the date inside must be that of the name. A booking that has a fault is
/// reported and stands in `Day::unread`, and the others count. Empty, after an error, where nothing
/// can be known of the day. Whether its pets exist is the caller's to find out: `Booking::pet` has
/// the place to point at.
std::optional<Day> read_day(const ReadContext&, const std::string& path);
std::optional<Day> read_day_text(const ReadContext&, std::string path, std::string text);
}  // namespace furnish
