#pragma once

#include <vector>

#include "figure/polygon.h"

namespace furnish {

/// A disc and its leader on paper, in millimetres (y down or up alike).
struct PlacedCallout {
  Vec disc;             ///< middle
  Vec edge;             ///< where the leader leaves the disc
  Vec anchor;           ///< where it points
  bool placed = false;  ///< false if there was no room for it
};

struct CalloutRoom {
  Shape figure;        ///< no disc may touch it
  Vec low, high;       ///< corners of the room for discs
  double radius = 2;   ///< of a disc
  double clear = 1.2;  ///< between a disc and the figure
};

/// Gives every callout a disc outside the figure. `anchors` are the places each may point to, in
/// order of preference: a later one must bring its disc 5 mm nearer. The leaders together are as
/// short as can be, so that no two cross; discs never touch each other or the figure, and no leader
/// runs through another's disc.
std::vector<PlacedCallout> place_callouts(const CalloutRoom&,
                                          const std::vector<std::vector<Vec>>& anchors);

/// True if the segments share a point.
bool segments_cross(Vec a, Vec b, Vec c, Vec d);
}  // namespace furnish
