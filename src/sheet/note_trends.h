#pragma once

#include "page/block.h"
#include "sheet/note.h"

namespace furnish {

/// What the visits so far show: is the weight steady, does the coat come back; how far apart they
/// were, and how fast it grows. Null before the second visit.
BlockPtr note_trends(const NoteDesk&, bool dense);
}  // namespace furnish
