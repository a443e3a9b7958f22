#pragma once

#include <cstdint>
#include <span>
#include <string_view>
#include <vector>

#include "model/pet.h"
#include "model/visit.h"
#include "plan/cautions.h"
#include "plan/growth.h"

namespace furnish {

/// What an owner is asked about before it is done; common practice, no source.
enum class ConsentTo : std::uint8_t {
  cutting_out,    ///< mats that are cut out rather than combed (trade/mats.h)
  clipping_short  ///< the body of a double coat, shorter than it may come back from
};

/// True if one of these is on record for that, guessed from its free words. Only English words are
/// known: in another `language` (BCP 47) any consent will do.
bool agreed_to(std::span<const Consent>, ConsentTo, std::string_view language);

/// What the visit calls for and nobody has agreed to, in the order of the enumeration. `growth`: as
/// it stands after the visit. A rule that the pet's file accepts on purpose (a caution of the plan
/// says so) is agreed to.
std::vector<ConsentTo> consents_missing(const Visit&, const Pet&,
                                        std::span<const RegionGrowth> growth,
                                        std::span<const Caution>, std::string_view language);
}  // namespace furnish
