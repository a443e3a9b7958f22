#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

#include "trade/region.h"
#include "trade/tools.h"

namespace furnish {

/// How a part of the work or a finish is done: the line a newer groomer needs, which is in the
/// catalogues of words under [how]. Common practice, no source.
enum class Method : std::uint8_t {
  before_bath,
  conditioner_double,
  rinse,
  damp_brush_out,
  nails,
  pads,
  feet,
  sanitary,
  breeches,
  tail,
  belly_and_chest,
  ears_straight,
  anywhere,
  look,
  wash_first,
  ears_natural,
  ears_rounded,
  ears_tassel,
  ears_shaved,
  tail_natural,
  tail_flag,
  tail_carrot,
  tail_tidied,
  feet_natural,
  feet_cat_foot,
  feet_round,
  feet_clean,
  nails_grind,
  nails_leave,
};
inline constexpr std::size_t method_count = 29;
/// In a catalogue of words: "before-bath". Total over Method.
std::string_view key(Method);
/// True if the line of `longer` says all that the line of `shorter` says.
constexpr bool says(Method longer, Method shorter) {
  return longer == shorter || (longer == Method::tail && shorter == Method::tail_tidied) ||
         (longer == Method::feet && shorter == Method::feet_natural);
}
/// True if the dog must stand for it.
bool needs_standing(Method);
/// False for a line that is of another tool: no thinners where a comb goes over the blade.
bool suits(Method, const Tool&);
/// The method of a region that has one of its own.
std::optional<Method> method_of(Region);
}  // namespace furnish
