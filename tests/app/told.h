#pragma once

#include <string>

#include "app/sheet_maker.h"

namespace furnish::test {

/// All that a reader could get out of a page and all that travels with it, without white space:
/// texts, what stands for figures, what links say, files inside it and beside it.
std::string all_of(const Made&);
/// Of a page alone.
std::string all_of(const Frame&);
}  // namespace furnish::test
