#pragma once

#include <vector>

#include "figure/hair.h"

namespace furnish {

/// How a kind of coat stands: the share of the outward direction against the lay at the root, and
/// how much and from which length on it gives in to its weight. By eye, from how such coats look.
struct Stand {
  double outward, droop, droop_from;
  double ragged;  ///< largest share by which neighbouring hairs differ in length
};
Stand stand_of(Coat);
/// True for coats that hang from the lips.
bool beard(Coat);

/// A hair followed to its length, or to the ground: the points where it bends, then its tip.
Ring followed(Vec root, Vec direction, double length, const Stand&, double ground = 0);

/// Where hair of a region points that lies flat: along the lay, unit length.
Vec lay_of(Region, Coat);
/// In [0, 1), the same for the same arguments on every machine.
double scatter(std::uint32_t seed, std::uint32_t index);

/// Gathers what neighbouring hairs sweep, one strip for each stretch between bends, so that few
/// large polygons are left to unite. A hair that ends early waits at its tip. Where hairs cross,
/// their strip would turn over and lose its inside: there they make a hull of their own.
class Sweep {
 public:
  explicit Sweep(std::vector<Furred::Lock>& out) : out_(out) {}

  /// The room between two hairs; of a region, as long as it stays the same.
  void between(const Ring& a, const Ring& b, Region);
  /// What comes next does not touch what came before; to be called at the end too.
  void part();

 private:
  struct Strip {
    Ring inner, outer;
    double turn = 0;
  };
  void flush(Strip&);

  std::vector<Furred::Lock>& out_;
  std::vector<Strip> strips_;
  Region region_ = Region::pads;
};
}  // namespace furnish
