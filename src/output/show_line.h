#pragma once

#include <cairo.h>

#include <string>

namespace furnish {

class ShapedLine;

/// Shows a line with the pen at the left end of its baseline, in the ink that is set. What runs
/// from right to left is written the way extractors of text expect of a PDF: stretch after stretch
/// in the order they are read, and within a stretch glyph after glyph from left to right, each
/// with the letters it stands for. Pango's own order is the other way about in both. Of the text
/// only the bytes from `begin` to `end` are shown, where they stand in the whole line.
void show_line(cairo_t*, const ShapedLine&, std::size_t begin = 0,
               std::size_t end = std::string::npos);
}  // namespace furnish
