#pragma once

#include <optional>
#include <span>
#include <vector>

#include "base/length.h"
#include "base/source.h"
#include "model/pet.h"
#include "model/salon.h"
#include "model/visit.h"

namespace furnish {

/// A substitute leaves at most this much more or less; common practice, no source.
inline constexpr Length substitute_within = 6_mm;

/// A part of the trim whose tool is not in the salon's drawer.
struct DrawerGap {
  Place place;
  Tool wanted;
  std::optional<Tool> use;  ///< empty: nothing within `substitute_within`
  std::optional<Length>
      difference;  ///< what `use` leaves more (or less, negative), against the lay
  SourceSpan span;
  /// Alike against the lay, their ranges may end apart in the direction of the cut: by how much.
  Length apart_at_most{};
};

/// True if the drawer has it. No kit, or a kit that lists nothing, says nothing: all is there.
/// Brush and strip are always there. A comb needs one of its length and its own base blade.
bool in_drawer(const Tool&, const std::optional<Kit>&);

/// Every clipper tool of the drawer: its blades, then its combs over each #30 and #40 it has.
/// Without a kit, all blades and usual combs over #30.
std::vector<Tool> clipper_tools(const std::optional<Kit>&);

/// The nearest allowed substitute by length against the lay. At equal distance the longer (coat can
/// be taken off later, never put back), then the same kind, then the wanted base, then full teeth.
/// Shears stand in for each other by what they do: straight and curved, thinning and blending.
/// `latest`: the visit whose mats count; may be null.
std::optional<Tool> substitute(const TrimPart&, const Salon&, const Pet&, const Visit* latest);

/// In the order of the trim; places that an alert avoids are left out.
std::vector<DrawerGap> drawer_gaps(const Salon&, const Pet&, const Visit* latest);
/// The gap of exactly this place; null if its tool is there.
const DrawerGap* find_gap(std::span<const DrawerGap>, Place);
}  // namespace furnish
