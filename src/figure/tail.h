#pragma once

#include "figure/skeleton.h"

namespace furnish {

/// The tail of a dog of medium build.
Tail tail_of(TailType, TailEnd);
}  // namespace furnish
