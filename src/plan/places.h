#pragma once

#include <optional>
#include <span>
#include <vector>

#include "model/pet.h"
#include "model/visit.h"

namespace furnish {

/// True if an alert avoids any of it.
bool avoided(Place, std::span<const Alert>);
/// What of `place` may be worked on: of a pair, the side that no alert avoids; empty if nothing.
std::optional<Place> workable(Place, std::span<const Alert>);
/// True for a tool that cuts or pulls: all but brush.
bool cuts(const Tool&);
/// The worst mats found at the visit on any coat that `place` shares; 0 without a visit.
int mats_at(const Visit*, Place);
}  // namespace furnish
