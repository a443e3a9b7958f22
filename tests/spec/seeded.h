#pragma once

#include <cstdint>

namespace furnish::test {

/// The generator of Steele, Lea and Flood, "Fast splittable pseudorandom number generators" (2014),
/// so that what a seed gives is the same on every machine and library.
class Seeded {
 public:
  explicit Seeded(std::uint64_t seed) : state_(seed) {}
  std::size_t below(std::size_t n) { return static_cast<std::size_t>(next() % n); }

 private:
  std::uint64_t next() {
    std::uint64_t z = (state_ += 0x9E3779B97F4A7C15U);
    z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9U;
    z = (z ^ (z >> 27U)) * 0x94D049BB133111EBU;
    return z ^ (z >> 31U);
  }
  std::uint64_t state_;
};
}  // namespace furnish::test
