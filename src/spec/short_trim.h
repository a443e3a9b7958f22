#pragma once

#include <string>

#include "model/trim.h"

namespace furnish {

/// The lines of a short `[trim]` that reads back as this trim: of all ways to name groups for work
/// that two of their regions share, and let what differs win over them, one with the fewest bytes.
/// Same trim, same text.
std::string short_trim(const ResolvedTrim&);
}  // namespace furnish
