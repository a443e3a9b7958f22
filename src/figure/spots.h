#pragma once

#include <string>

#include "figure/figure.h"
#include "figure/on_paper.h"

namespace furnish {

/// The signs of a spot at `at` (mm), about `size` mm wide: struck circle, triangle with an
/// exclamation mark, or a square with the finding's letter.
void draw_spot(const FigureSpot&, Vec at, double size, const Setting&, Frame&);
/// Cross-hatching of a region that no tool may touch.
void draw_avoided(const std::vector<Contour>& area, Frame&);
/// A line of text with the middle of its capitals at `at` (mm).
void draw_centred(const std::string&, Vec at, Face, Role, Ink, const Setting&, Frame&);
}  // namespace furnish
