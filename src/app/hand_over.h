#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "app/workshop.h"
#include "base/diagnostic.h"
#include "base/source.h"

namespace furnish {

/// What one of several workshops has read for a pet, and said meanwhile of its salon.
struct HandedOver {
  std::uint32_t from = 0;  ///< the number of the first text, in that workshop
  std::vector<SourceSet::Text> texts;
  std::vector<Diagnostic> said;
};
/// Lets go of what it gives, but for what all pets share. `from`: the number of the shop's files
/// before the pet.
HandedOver handed_over(Workshop&, std::uint32_t from);

/// Puts together what several workshops said, as if one alone had done all: in the order of the
/// pets, with each file of the salon known by one number, and what is wrong in it told once.
class HandOver {
 public:
  /// Keeps the reference: the workshop that tells all.
  explicit HandOver(Workshop& run) : run_(run) {}
  /// To be called in the order of the pets. `shop`: whose it is. True if something was said of what
  /// all pets share.
  bool take(std::size_t shop, HandedOver);
  /// What a shop said of the pet that was taken last, under the run's numbers.
  void take(std::size_t shop, DiagnosticSink&);

 private:
  void renumber(std::size_t shop, Diagnostic&);

  Workshop& run_;
  std::map<std::size_t, std::map<std::uint32_t, std::uint32_t>>
      numbers_;                                  ///< the run's, by each shop's
  std::map<std::string, std::uint32_t> shared_;  ///< by path
  std::set<std::string> said_;                   ///< of files that all share
};
}  // namespace furnish
