#pragma once

#include <set>

#include "app/workshop.h"

namespace furnish {

/// For a salon that wants to know what its pages still show in another language than their own: the
/// pages of its pets are made as for the day, and what each then shows so is a warning, told once.
class ForeignTexts {
 public:
  ForeignTexts(const Options& options, Workshop& shop) : options_(options), shop_(shop) {}

  /// Card, style sheet and the last note for staff, care sheet and the last note for the owner. All
  /// else that they would warn of is left to who makes them.
  void look_at(const PetPath&);

 private:
  const Options& options_;
  Workshop& shop_;
  std::set<SourceSpan> told_;
};
}  // namespace furnish
