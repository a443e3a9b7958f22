#pragma once

#include <optional>
#include <string>
#include <utility>

#include "base/date.h"

namespace furnish {

/// "2026-11-24", or "2026-11-24-2" for the second visit of that day; no day if it is neither.
std::pair<std::optional<Date>, int> parse_visit(const std::string& text);
}  // namespace furnish
