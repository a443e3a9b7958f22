#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "figure/polygon.h"
#include "figure/skeleton.h"
#include "trade/coat.h"
#include "trade/finish.h"

namespace furnish {

/// The coat as it is drawn: its kind, and how long it is in every region, in units of the figure.
struct DrawnCoat {
  Coat coat = Coat::double_coat;
  std::array<double, region_count> length{};
  std::vector<Seam> stepped;  ///< seams over which lengths are not blended
  double brow = 0;            ///< length of brows, or of a fringe over the eyes; zero for none
  double coarse = 1;          ///< so many times as far apart as usual are the hairs that are drawn
  double tied = 0;            ///< length of the hair tied up in a topknot; zero for none
  TailEnd tail_end = TailEnd::natural;
  double at(Region region) const { return length[static_cast<std::size_t>(region)]; }
};

/// Over this much outline on either side lengths are blended, in units of the figure.
inline constexpr double blend_reach = 12;

/// End of one hair, for the texture of the edge.
struct HairTip {
  Vec at, direction;  ///< direction of the hair's last stretch, unit length
  Region region;
  double length;
};

/// A part with its coat on. Every hair is a path that its length does not change, only how far it
/// is followed; so a longer coat holds a shorter one.
struct Furred {
  std::vector<Ring> skin;  ///< the part without coat
  struct Lock {
    Ring hull;
    Region region;
  };
  std::vector<Lock> locks;  ///< hulls of neighbouring hairs, by region
  std::vector<HairTip> tips;
  Ring hidden;  ///< points of the skin where it lies in another part, where no line is drawn
  /// Skin and locks together.
  Shape shape() const;
};

/// Hair over the coated stretches of an outline. `seed` varies lengths a little, the same each
/// time.
Furred furred(const SkinPart&, const DrawnCoat&, std::uint32_t seed);
}  // namespace furnish
