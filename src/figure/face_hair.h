#pragma once

#include "figure/hair.h"
#include "figure/skeleton.h"

namespace furnish {

/// How hair grows at a place of an outline: where it lies, the share of the outward direction
/// against that, and its length.
struct Growth {
  Vec lay;
  double outward = 0;
  double length = 0;
};

/// Changes what grows on a face where it is not as elsewhere: a beard hangs from the lips, while
/// the bridge of the nose is kept short; brows and fringes fall forward from over the eyes.
/// `from_nose` is how far behind the nose's tip the hair grows.
void grow_face(const Landmark&, Vec normal, double from_nose, const DrawnCoat&, Growth&);

/// Adds a topknot to a head: hair tied up at the crown, falling to all sides like a fountain.
void tie_up(const SkinPart& body, const DrawnCoat&, Furred&);
}  // namespace furnish
