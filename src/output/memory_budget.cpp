#include "output/memory_budget.h"

#include <malloc.h>

#include <cstdint>
#include <cstdlib>
#include <limits>
#include <new>

// The operators of the whole program, which cost a look at a number of this thread where no budget
// is set. The limit that the system has (RLIMIT_AS) holds every thread of a process at once, and a
// sanitizer's own memory with them.

namespace furnish {
namespace {
constexpr std::int64_t no_budget = std::numeric_limits<std::int64_t>::max();
/// Bytes that this thread may still take.
thread_local std::int64_t left = no_budget;

/// Null if it does not fit, or the system has no more.
void* take(std::size_t size) {
  if (left == no_budget) return std::malloc(size == 0 ? 1 : size);
  if (left <= 0 || size > static_cast<std::uint64_t>(left)) return nullptr;
  void* const memory = std::malloc(size == 0 ? 1 : size);
  if (memory != nullptr) left -= static_cast<std::int64_t>(::malloc_usable_size(memory));
  return memory;
}

void* take_or_throw(std::size_t size) {
  void* const memory = take(size);
  if (memory == nullptr) throw std::bad_alloc();
  return memory;
}

void give_back(void* memory) {
  if (memory != nullptr && left != no_budget) {
    left += static_cast<std::int64_t>(::malloc_usable_size(memory));
  }
  std::free(memory);
}
}  // namespace

MemoryBudget::MemoryBudget(std::size_t bytes) {
  left = static_cast<std::int64_t>(bytes);
}
MemoryBudget::~MemoryBudget() {
  left = no_budget;
}
}  // namespace furnish

// All of them but those for wide alignment, which nobody asks for here, so that no sanitizer sees
// memory taken by one and given back by another.
void* operator new(std::size_t size) {
  return furnish::take_or_throw(size);
}
void* operator new[](std::size_t size) {
  return furnish::take_or_throw(size);
}
void* operator new(std::size_t size, const std::nothrow_t&) noexcept {
  return furnish::take(size);
}
void* operator new[](std::size_t size, const std::nothrow_t&) noexcept {
  return furnish::take(size);
}
void operator delete(void* memory) noexcept {
  furnish::give_back(memory);
}
void operator delete[](void* memory) noexcept {
  furnish::give_back(memory);
}
void operator delete(void* memory, std::size_t) noexcept {
  furnish::give_back(memory);
}
void operator delete[](void* memory, std::size_t) noexcept {
  furnish::give_back(memory);
}
void operator delete(void* memory, const std::nothrow_t&) noexcept {
  furnish::give_back(memory);
}
void operator delete[](void* memory, const std::nothrow_t&) noexcept {
  furnish::give_back(memory);
}
