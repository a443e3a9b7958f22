#pragma once

#include "page/frame.h"
#include "sheet/words.h"

namespace furnish {

/// Gives what a page shows without words those that a listener hears: boxes to tick, lines to write
/// on, and the diamond that says that something differs from the style.
void give_words(Frame&, const Words&);
}  // namespace furnish
