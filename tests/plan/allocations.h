#pragma once

#include <cstddef>

namespace furnish::made {

/// Pieces of memory that this process has asked for so far. The difference before and after is a
/// measure of work that is the same on every machine, however busy: the search for an order of
/// work asks for one with each state that it reaches, and lists and texts for one as they grow.
std::size_t allocations();
}  // namespace furnish::made
