#pragma once

#include <cstdint>
#include <vector>

#include "figure/spline.h"
#include "figure/vec.h"
#include "model/pet.h"
#include "trade/finish.h"
#include "trade/region.h"

namespace furnish {

/// What an outline is from one landmark to the next.
enum class Skin : std::uint8_t {
  coated,  ///< hair grows here
  bare,    ///< outline without hair: nose leather, pads
  covered  ///< lies inside another part, so neither line nor hair
};

struct Landmark {
  Vec at;
  Region region;  ///< of the stretch to the next landmark
  Skin skin = Skin::coated;
  bool corner = false;
  bool brow = false;  ///< over the eye, between stop and crown
};

/// A closed outline without coat, clockwise as seen (y up), so that outward is on the left.
using SkinPart = std::vector<Landmark>;

/// What is drawn on the head beside its outline.
struct FaceLines {
  Vec eye;
  double eye_size = 1;     ///< times an eye 3.4 long
  double eye_tilt = 0;     ///< radians, outer corner up
  std::vector<Knot> nose;  ///< closed: the leather
  Vec nostril;
  std::vector<Knot> mouth;               ///< open: from under the nose to the corner of the lips
  std::vector<std::vector<Knot>> folds;  ///< open lines: cheek, wrinkles of a short nose
};

struct Ear {
  SkinPart outline;
  std::vector<std::vector<Knot>> inner;  ///< open lines inside
  bool hangs = false;                    ///< in front of the cheek: the far ear is hidden
  Vec far_ear;                           ///< the far ear is the same, moved by this
};

struct Tail {
  std::vector<Knot> spine;     ///< open, from the root to the tip
  std::vector<double> radius;  ///< of the tail without coat, at each knot
  bool over_back = false;      ///< carried in front of the back
};

/// The dog without coat: landmarks after FIGURE's proportions (head about 40 % of the height at the
/// withers, elbow at half, hock at a quarter; common proportions in breed standards, no one
/// source), changed by build.
struct Skeleton {
  SkinPart body;  ///< head, neck and trunk
  SkinPart front_leg, rear_leg;
  Ear ear;
  Tail tail;
  FaceLines face;
  Vec far_front, far_rear;                 ///< the far legs are the near ones, moved by this
  std::vector<std::vector<Knot>> creases;  ///< shoulder, elbow, thigh
  std::vector<Region> crease_region;       ///< whose coat hides each of them
  std::vector<std::vector<Knot>> toes;     ///< short lines on the feet
};

Skeleton skeleton(const Build&, TailEnd = TailEnd::natural);

/// Moves a point of the medium dog to where it is in a dog of this build: its bone first; legs
/// shorten between foot and elbow and let down all above; the trunk stretches behind the withers;
/// the muzzle before the stop.
Vec built(Vec, const Build&);
}  // namespace furnish
