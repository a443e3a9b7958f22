#pragma once

#include <string>

#include "model/pet.h"

namespace furnish {

/// A pet's file written anew, in the order of the format: everything the model holds, with the
/// style and the salon's products by their keys, so that reading it in the same salon gives the
/// same pet. What a pet's file cannot say is not in it: the day a salon's bottle was mixed, groups
/// that `avoid` and `keep_under` were spread from (the same places are).
/// Whom it is for is decided before (model/for_everyone.h).
std::string pet_toml(const Pet&);

/// The trim as a short text for a QR code: a pet's file with `name` and `coat`, the
/// resolved trim and the resolved finish written out, so that no style's file is needed to read it.
/// Reading gives the same places, tools, lengths, lays, notes and finish, all said by the pet. What
/// only a style holds is left out: its name, its looks, the seams where it wants a line.
/// Equal work is said once by the key of a group, with what differs named beside it, wherever that
/// is shorter; blades are in ASCII ("8.5"), lengths in the shorter of mm and inches.
std::string trim_toml(const Pet&);
}  // namespace furnish
