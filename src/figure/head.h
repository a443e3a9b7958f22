#pragma once

#include "figure/skeleton.h"

namespace furnish {

/// The head's share of the outline, from the throat's end at the jaw round the nose to the occiput,
/// for a dog of medium legs; it is continued by the trunk.
struct Head {
  SkinPart outline;
  FaceLines face;
  double drop_ear = 1;  ///< length of an ear that hangs, against that of a medium head
  Vec ear;              ///< where the ear stands, against that of a medium head
};
Head head_of(NoseLength);
Ear ear_of(EarType, const Head&);
}  // namespace furnish
