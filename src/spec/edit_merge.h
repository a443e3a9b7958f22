#pragma once

#include <optional>
#include <string>
#include <vector>

#include "spec/edit.h"

namespace furnish {

/// One place that two people changed, each in their own way.
struct EditConflict {
  EditPath path;                                 ///< as the edit names it
  std::optional<EditValue> base, theirs, yours;  ///< empty where nothing is
};

struct MergedEdits {
  EditedText text;  ///< the newer text with all edits; as it was if there are conflicts or a fault
  std::vector<EditConflict> conflicts;
  std::string fault;  ///< why an edit cannot be made at all, for people
};

/// Makes edits that were meant for one text in a newer one of the same file, in which others may
/// have changed other places, taken elements out of lists or added some. What both changed to the
/// same is no conflict. pre: both are good()
MergedEdits merged(const EditedText& base, const std::vector<Edit>&, const EditedText& now);
}  // namespace furnish
