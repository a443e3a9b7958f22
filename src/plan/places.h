#pragma once

#include <optional>
#include <span>
#include <vector>

#include "model/pet.h"
#include "model/visit.h"

namespace furnish {

/// True for the pads and the sanitary area: what was there is washed before it goes to a face.
constexpr bool is_soiled(Region region) {
  return region == Region::pads || region == Region::sanitary;
}

/// True if an alert avoids any of it.
bool avoided(Place, std::span<const Alert>);
/// What of `place` may be worked on: of a pair, the side that no alert avoids; empty if nothing.
std::optional<Place> workable(Place, std::span<const Alert>);
/// What of a place another does not have: of a pair, the other side; empty if nothing.
std::optional<Place> without(Place, Place taken);
/// True for a tool that cuts or pulls: all but brush.
bool cuts(const Tool&);
/// True for the clipper, bare or under a comb.
bool clips(const Tool&);
/// The state that gives the length at `place`, its own before one that only meets it; null if none
/// does.
const RegionState* measured_at(std::span<const RegionState>, Place);
/// Where the visit found felt: places with mats to the skin in one piece; and if more than half of
/// the body's regions have mats that must be cut out, those too (common practice, no source). In
/// order; none without a visit.
std::vector<Place> felted_places(const Visit*);
/// The worst mats found at the visit on any coat that `place` shares; 0 without a visit.
int mats_at(const Visit*, Place);
}  // namespace furnish
