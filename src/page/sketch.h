#pragma once

#include <vector>

#include "page/shaper.h"

namespace furnish {

/// A line as it will probably be.
struct SketchedLine {
  Length width;
  double points = 0;  ///< the largest size on it
};

/// Where a text will probably break, from the widths of single characters: no shaping, no kerning.
/// The fitter chooses a size by it and then sets the text to be sure. At least one line; the first
/// one's width counts `indent`.
std::vector<SketchedLine> sketch(const std::vector<SizedText>&, Length width, Breaking,
                                 const FontSet&, Length indent = {});
}  // namespace furnish
