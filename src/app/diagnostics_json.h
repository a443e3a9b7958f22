#pragma once

#include <span>
#include <string>

#include "base/diagnostic.h"

namespace furnish {

/// What was said, for other programs: an array of objects with severity, code, message, hint, file,
/// begin and end (line and column from 1, counted in code points; the end is behind the last one;
/// none where a file as a whole is meant), and notes with theirs.
std::string diagnostics_json(std::span<const Diagnostic>, const SourceSet&);
}  // namespace furnish
