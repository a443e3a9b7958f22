#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "base/length.h"
#include "base/source.h"
#include "model/pet.h"
#include "model/salon.h"

namespace furnish {

struct Caution;
struct DrawerGap;

/// What a length rests on. `unknown`: strip or shears without a stated length, or a coat nobody
/// named.
enum class LengthBasis : std::uint8_t { blade, comb, stated, natural, unknown };

/// The coat that a part of the trim leaves.
struct PartLength {
  Place place;
  LengthBasis basis = LengthBasis::unknown;
  std::optional<LengthRange> left;  ///< empty if unknown
  SourceSpan span;                  ///< of the trim's entry
  bool substitute = false;          ///< by what stands in for a tool that the drawer lacks
  Lay lay = Lay::with;              ///< in which it is cut; with it where a caution says so
};

/// What the tool leaves against the lay: the kit's measured length of a blade, else the table's; a
/// comb's own length; nothing for other tools.
std::optional<Length> nominal_length(const Tool&, const std::optional<Kit>&);

/// What one entry leaves on a region: by blade or comb and the direction of the cut; shears and
/// strip as stated; brush as stated, else the coat's natural length.
PartLength length_left(const TrimPart&, const std::optional<Kit>&, std::optional<Coat>);
/// One row for each part of the trim, in its order, as if the drawer had every tool.
std::vector<PartLength> lengths_wished(const Salon&, const Pet&);
/// The same by the tools that are really taken: where one stands in for another, what it leaves;
/// and in the direction that the plan's cautions leave.
std::vector<PartLength> lengths_left(const Salon&, const Pet&, std::span<const DrawerGap>,
                                     std::span<const Caution>);
/// The row that meets `place`; null if nothing is done there.
const PartLength* find_length(const std::vector<PartLength>&, Place place);
/// Midway: what to expect of a cut that leaves a range.
Length middle(LengthRange);
}  // namespace furnish
