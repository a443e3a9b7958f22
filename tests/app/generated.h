#pragma once

#include <cstdint>
#include <random>
#include <string>

namespace furnish::test {

/// Numbers from one seed, the same with every library: the engine is given by the standard, the
/// distributions are not.
class Dice {
 public:
  explicit Dice(std::uint32_t seed) : engine_(seed) {}
  /// 0 to n - 1. pre: n > 0
  std::size_t below(std::size_t n) { return static_cast<std::size_t>(engine_()) % n; }
  bool one_in(std::size_t n) { return below(n) == 0; }
  template <typename List>
  const auto& of(const List& list) {
    return list[below(std::size(list))];
  }

 private:
  std::mt19937 engine_;
};

/// A pet file that a person might write: any section may be there or not, texts from a word to far
/// too long, in the scripts of many languages. Now and then with a value out of bounds.
std::string generated_pet(Dice&);
}  // namespace furnish::test
