#pragma once

#include <string>

#include "base/diagnostic.h"
#include "base/files.h"

namespace furnish {

/// Warns of files in a salon's folder that look as if they were meant and are never read: other
/// endings (`rex.toml.txt`, `Moss.TOML`), visits of a pet that is not there, with the likely new
/// name, visits beside their folder, and two files in pets/ that differ by capitals only.
void tell_overlooked(const std::string& root, DiagnosticSink&);
}  // namespace furnish
