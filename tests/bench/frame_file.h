#pragma once

#include <string>

#include "page/frame.h"

namespace furnish::bench {

/// A page as the bare program reads it, a line a mark, in points:
///     page WIDTH HEIGHT
///     fill GREY X Y WIDTH HEIGHT
///     stroke GREY WEIGHT DASH X1 Y1 X2 Y2
///     path FILL STROKE WEIGHT CONTOURS {CLOSED CURVES X Y {X1 Y1 X2 Y2 X3 Y3}}
///     text GREY X Y RUNS BYTES {BEGIN END FACE POINTS}  and the text on the next line
/// A grey is 0 to 1, or -1 for none. Structure is left out: the bare program writes no tags.
std::string frame_file(const Frame&);
}  // namespace furnish::bench
