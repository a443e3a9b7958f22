#pragma once

#include <cstdint>
#include <vector>

#include "page/shaper.h"

namespace furnish {

/// A line as it will probably be.
struct SketchedLine {
  Length width;
  double points = 0;  ///< the largest size on it
};

/// Where a text will probably break, from the widths of single characters: no shaping, no kerning.
/// The fitter chooses a size by it and then sets the text to be sure. The text is read once, and
/// its words then only scaled for each size and width that is tried.
class Sketch {
 public:
  /// The sizes of the parts do not matter yet.
  Sketch(const std::vector<SizedText>& parts, const FontSet&);
  /// At least one line; the first one's width counts `indent`. `sizes` are those of the parts.
  std::vector<SketchedLine> lines(const std::vector<TypeSize>& sizes, Length width, Breaking,
                                  Length indent = {}) const;

 private:
  enum class Step : std::uint8_t { letters, kept_space, space, may_end, line_end };
  /// Neighbours of one kind in one part.
  struct Bit {
    Step step;
    std::size_t part;
    double width;  ///< em
  };
  void add(Step, std::size_t part, double width);
  std::vector<Bit> bits_;
};
}  // namespace furnish
