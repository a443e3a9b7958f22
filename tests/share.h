#pragma once

#include <cstddef>
#include <cstdlib>

namespace furnish::test {

/// How many of a test's generated cases this run tries. They come from one seed, so that a short
/// run tries the first of those that a long one does: all, if the environment has FURNISH_LONG, as
/// `tests/run --long` sets it, else a fifth.
inline std::size_t share_of(std::size_t cases) {
  return std::getenv("FURNISH_LONG") != nullptr ? cases : cases / 5;
}
}  // namespace furnish::test
