#pragma once

#include "page/frame.h"

namespace furnish {

/// A page that was set from left to right, turned over for readers from right to left: what stood
/// at the left edge stands at the right one, at the same height. Texts move and keep their reading;
/// photographs, hatchings and drawings with a room of their own (OpenTag::whole) move as they are.
Frame mirrored(Frame);
}  // namespace furnish
