#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "page/frame.h"

namespace furnish {

/// How many frames of one size fit on a sheet, upright themselves; the sheet is turned if it then
/// holds more.
struct Grid {
  int columns = 0, rows = 0;
  Size sheet;  ///< as it lies
  int count() const { return columns * rows; }
};
Grid grid_for(Size frame, Size sheet);

/// Several frames on each sheet, row by row, edges touching, in the middle, with cut marks outside
/// them. Every frame becomes a section of its own. pre: all of one size, grid_for() is not empty.
/// `backs`: each row in reverse, so that a back lies behind its front once the sheet is turned over
/// its upright edge; a frame without marks leaves its place empty.
enum class ImposedSide : std::uint8_t { fronts, backs };
std::vector<Frame> impose(std::span<const Frame>, Size sheet, ImposedSide = ImposedSide::fronts);
}  // namespace furnish
