#pragma once

#include <cairo.h>

namespace furnish {

class ShapedLine;

/// Shows a line with the pen at the left end of its baseline, in the ink that is set. What runs
/// from right to left is written the way extractors of text expect of a PDF: stretch after stretch
/// in the order they are read, and within a stretch glyph after glyph from left to right, each
/// with the letters it stands for. Pango's own order is the other way about in both.
void show_line(cairo_t*, const ShapedLine&);
}  // namespace furnish
