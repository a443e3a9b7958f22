#pragma once

#include <cstddef>
#include <cstdlib>

namespace furnish::test {

/// Whether the environment has FURNISH_LONG, as `tests/run --long` sets it.
inline bool long_run() {
  return std::getenv("FURNISH_LONG") != nullptr;
}

/// How many of a test's generated cases this run tries. They come from one seed, so that a short
/// run tries the first of those that a long one does: all, or an eighth.
inline std::size_t share_of(std::size_t cases) {
  return long_run() ? cases : cases / 8;
}

/// Whether this run tries this pet of a sample in this language or on this paper: a third of the
/// pairs, or a share as small as is given, so that each pet and each of those has its turn; all of
/// them in a long run.
inline bool in_turn(std::size_t pet, std::size_t of_it, std::size_t share = 3) {
  return long_run() || (pet + of_it) % share == 0;
}
}  // namespace furnish::test
