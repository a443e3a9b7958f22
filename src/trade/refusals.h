#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include "trade/region.h"
#include "trade/tools.h"

namespace furnish {

/// What free words about a pet rule out: "no thinning shears on the ears".
struct Refusal {
  Tool tool;  ///< any of its kind: the shears, the strip and the kind alone count
  bool any_shears = false, any_strip = false;  ///< "no scissors", "no stripping"
  std::vector<Region> regions;                 ///< where; empty: everywhere
};

/// How a text speaks of what is not wanted.
enum class Refusing : std::uint8_t {
  rules,    ///< "no clippers": only what it takes back
  dislikes  ///< a list of what is not liked: whatever it names
};

/// Reads clause by clause (see trade/phrases.h for negation) the names of tools: thinning and
/// blending shears with the trade's other words, curved and straight ones, scissors and shears of
/// every kind, clippers, guard combs, stripping by hand or knife; with the regions and groups that
/// the same clause names. What it cannot understand: other languages; a tool named by what it does
/// ("nothing that buzzes"); "only" ("scissors only" rules out no clipper); a region in a clause of
/// its own. There it says nothing, and a person reads the words on the page.
std::vector<Refusal> read_refusals(std::string_view words, Refusing);
/// True if the words rule the nail grinder out, or say that the pet is frightened of it ("panics at
/// the grinder"); a list of dislikes by naming it, and not its noise alone.
bool refuses_grinder(std::string_view words, Refusing);
/// True if one of them rules the tool out at the place.
bool refuses(const Refusal&, const Tool&, Place);
}  // namespace furnish
