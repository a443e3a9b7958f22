#pragma once

#include <string>

#include "spec/file_kinds.h"

namespace furnish {

/// The JSON Schema (draft 07) of a kind of file, for editors and other programs. What the reader
/// takes, it takes; what needs more than one key, or the salon's other files, it lets pass.
std::string schema(const FileKind&);
}  // namespace furnish
