#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "page/frame.h"

namespace furnish {

/// Squares of one size in rows and columns, as of a code that a phone reads.
struct Squares {
  Rect box;
  std::size_t columns = 0, rows = 0;
  std::vector<bool> dark;  ///< row after row
};

/// What a path fills; empty if that is anything else, or too little to be worth it.
std::optional<Squares> squares_of(const PathMark&);

/// The operators of PDF that fill them, each a unit wide and high, from the corner at the left
/// below.
std::string filled(const Squares&);
}  // namespace furnish
