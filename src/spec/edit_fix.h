#pragma once

#include <vector>

#include "base/diagnostic.h"
#include "spec/edit.h"

namespace furnish {

/// What a fault of the reader offers to write instead, as edits of the file: one for each choice;
/// none where it takes a person to know. pre: the fault is about this file, as it is
std::vector<Edit> fixes(const EditedText&, const Diagnostic&);
}  // namespace furnish
