#pragma once

#include <pango/pango.h>

#include <string>

#include "page/kept_together.h"

namespace furnish {

// Where the lines of a layout may end, and whether that could be kept.

/// No line ends inside "13–25" or "e-mail": a dash between two digits is kept with them, a hyphen
/// with the single letter before it.
void keep_ranges(const std::string& text, PangoAttrList*);
/// Nor at a space between what is read as one. False if there is none.
bool keep_pairs(const std::string& text, Keeping, PangoAttrList*);
/// True if a line had to end within a word or the name of a file, or is wider than it may be.
bool strained(PangoLayout*);
}  // namespace furnish
