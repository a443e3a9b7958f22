#pragma once

#include <span>
#include <string>
#include <vector>

#include "base/source.h"
#include "model/pet.h"
#include "trade/dryer.h"
#include "trade/pose.h"
#include "trade/refusals.h"

namespace furnish {

/// A line of the pet's file that rules tools or dryers out. What free words can say, and what is
/// not understood, is in trade/refusals.h and trade/dryer.h.
struct RuledOut {
  std::string words;  ///< as written
  SourceSpan span;
  std::vector<Refusal> tools;
  DryerWords dryer;
  bool grinder = false;  ///< of its nails
};

/// How the pet is held, lifted and dried, where one stops, what its owner does not like, and what
/// its alerts say, in that order; only what rules something out. Of an alert, in whatever language
/// of the file it is understood, the sentence that does.
std::vector<RuledOut> ruled_out(const Pet&);
/// The first that rules the tool out at the place; null if none does.
const RuledOut* ruling_out(std::span<const RuledOut>, const Tool&, Place);
/// The first that rules the nail grinder out; null if none does.
const RuledOut* ruling_out_grinder(std::span<const RuledOut>);

/// How the dog may be held: what its handling and what to do for its alerts say, and of its feet
/// the notes of its trim too.
PoseWords pose(const Pet&);

/// What to dry with, so that nobody has to choose between two lines.
struct Drying {
  std::string words;  ///< the stricter line's; empty if nobody says how
  SourceSpan span;
  bool ruled_out = false;  ///< the plan's own line said otherwise
  std::string planned;     ///< then: that line
  SourceSpan planned_span;
};

/// The bath's `dry`, else the handling's `dryer`; where one uses a dryer that the other, or another
/// line, rules out, the one that rules it out.
Drying drying(const Pet&, std::span<const RuledOut>);
}  // namespace furnish
