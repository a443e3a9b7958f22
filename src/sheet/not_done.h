#pragma once

#include <string>
#include <vector>

#include "sheet/note_words.h"

namespace furnish {

// What owners read of a visit that was not done: kind words, and never that we did what we did not.

/// "We did not groom Rex this time.", or that only a part of it was done.
std::string not_done_words(const Visit&, const Pet&, const Words&);
/// What was done all the same, besides the places of the trim: a sentence each.
std::vector<std::string> done_parts(const Visit&, const Pet&, const Words&);
/// That a vet should see the pet first, where the reason asks for one; else empty.
std::string not_done_vet(const Visit&, const SheetDesk&);
/// The reason on the file's copy; on the owner's all of that. pre: the note is of such a visit.
std::vector<NoteLine> not_done_lines(const NoteDesk&);
}  // namespace furnish
