#pragma once

#include <cstddef>
#include <cstdio>

#include "base/diagnostic.h"

namespace furnish {

/// True of a terminal that a line can be taken back on; "dumb" ones cannot.
bool can_rewrite(std::FILE*);
/// Colours on a terminal, unless NO_COLOR is set and not empty; never in a pipe or a file.
Colours colours_of(std::FILE*);
/// How many characters a line of the terminal holds; 80 where it does not say.
std::size_t columns_of(std::FILE*);
}  // namespace furnish
