#pragma once

#include <optional>

#include "base/measures.h"
#include "figure/vec.h"
#include "model/pet.h"

namespace furnish {

/// The bone of a dog whose file does not say: giants (45 kg and more) and stocky flat faces are
/// heavy, dogs with long legs and a long nose are fine, as sighthounds are. Common practice, no
/// source.
Bone bone_of(const Build&, std::optional<Mass> weight);

/// Moves a point of the medium dog's head, neck and trunk to where it is in one of this bone: heavy
/// ones have a large, deep head and a deep chest; fine ones a narrow head on a long neck, a brisket
/// down to the elbow, a belly tucked up and an arched loin. By eye.
Vec boned(Vec, Bone);
/// Moves a point of a leg of the medium dog, front or rear, toward or away from the leg's own axis.
Vec leg_boned(Vec, Bone);
}  // namespace furnish
