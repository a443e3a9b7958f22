#pragma once

#include "page/frame.h"

namespace furnish {

/// The mark somewhere else on the page; tags stay as they are, but for the room of a drawing.
Mark moved(Mark, Point by);
}  // namespace furnish
