#pragma once

#include <vector>

#include "figure/vec.h"
#include "model/pet.h"
#include "page/block.h"

namespace furnish {

/// Where something rubs and mats begin, as seen from the side, in units of the figure: behind the
/// ear, under the collar, in the armpit, in the groin, behind the thigh, between the toes (common
/// practice, no source).
std::vector<Vec> friction_points(const Build&);

/// The mark of such a place: a ring round a dot, `size` mm wide, that is seen on any shade.
void draw_friction(Vec at, double size, Frame&);

/// The mark alone, for a key: in the middle of the box it is given, as wide as it asks to be high.
BlockPtr friction_sign(Length height);
}  // namespace furnish
