#pragma once

#include <random>
#include <string>
#include <vector>

#include "model/pet.h"
#include "model/salon.h"

namespace furnish::test {

/// Pets of every kind that a file can describe, from a seed: each field there or not, words with
/// quotes, backslashes, brackets and letters of several scripts, quantities to the smallest unit.
class PetMaker {
 public:
  /// `styles` are those a pet may follow.
  PetMaker(unsigned seed, const Salon& salon, std::vector<Style> styles)
      : random_(seed), salon_(salon), styles_(std::move(styles)) {}
  Pet pet();

 private:
  int upto(int most) { return std::uniform_int_distribution<int>(0, most)(random_); }
  bool maybe() { return upto(1) == 1; }
  template <typename Table>
  const auto& any_of(const Table& table) {
    return table[static_cast<std::size_t>(upto(static_cast<int>(std::size(table)) - 1))];
  }
  std::string words();
  std::string words_or_none() { return maybe() ? words() : std::string(); }
  std::vector<std::string> list();
  Date date();
  Place place(bool any_side);
  TrimEntry entry();
  TrimRules rules();
  Alert alert();
  ProductUse product(ProductKind usual);
  Bath bath();
  Finish finish();

  std::mt19937 random_;
  const Salon& salon_;
  std::vector<Style> styles_;
};

/// The names of the fields in which two pets are not the same; where something was written is no
/// part of a pet.
std::vector<std::string> differences(const Pet&, const Pet&);

/// The trim side by side, each with its work, whoever says it: what trim_toml() must keep.
struct WorkAt {
  Place place;
  TrimEntry entry;
};
std::vector<WorkAt> work(const ResolvedTrim&);
bool same(const std::vector<WorkAt>&, const std::vector<WorkAt>&);
}  // namespace furnish::test
