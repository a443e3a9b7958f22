#pragma once

#include <cstddef>

namespace furnish {

/// While it lives, this thread may take so many bytes by `new` beyond what it gives back; past
/// that, `new` throws std::bad_alloc. Other threads are not held to it, nor is memory that a
/// library takes by malloc. One at a time in a thread.
class MemoryBudget {
 public:
  explicit MemoryBudget(std::size_t bytes);
  ~MemoryBudget();
  MemoryBudget(const MemoryBudget&) = delete;
  MemoryBudget& operator=(const MemoryBudget&) = delete;
};
}  // namespace furnish
