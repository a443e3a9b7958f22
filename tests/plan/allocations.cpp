#include "plan/allocations.h"

#include <atomic>
#include <cstdlib>
#include <new>

namespace {
std::atomic<std::size_t> asked = 0;
}  // namespace

// All other forms of new and delete but those for wider alignment come here (C++20, [new.delete]).
void* operator new(std::size_t size) {
  ++asked;
  if (void* const memory = std::malloc(size == 0 ? 1 : size)) return memory;
  throw std::bad_alloc();
}
void operator delete(void* memory) noexcept {
  std::free(memory);
}
void operator delete(void* memory, std::size_t) noexcept {
  std::free(memory);
}

std::size_t furnish::made::allocations() {
  return asked;
}
