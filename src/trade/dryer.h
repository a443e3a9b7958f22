#pragma once

#include <string_view>

namespace furnish {

/// What free words say about drying: "towel, then force dryer, not on the head".
struct DryerWords {
  bool force = false, heated = false, cage = false;           ///< is to be used
  bool no_force = false, no_heated = false, no_cage = false;  ///< is not to be used
  bool head_spared = false;  ///< the face gets something gentler; spares the ears too
  bool ears_spared = false;
  /// True if a force dryer reaches head or ears as far as these words say.
  bool force_on_head() const { return force && !head_spared; }
  bool force_on_ears() const { return force && !head_spared && !ears_spared; }
};

/// Reads these words, whole (see trade/phrases.h for negation):
///   force   force(d), velocity, blaster, blower
///   heated  heated, heat, hot, warm - unless of a towel or a room
///   cage    cage, crate, cabinet; a kennel dryer
/// The head (head, face, muzzle, eyes) or the ears are spared where their clause takes them back
/// ("not on the head") or gives them something gentler: off, away, except, towel, low, cool, hand,
/// cover, cotton; and where only the body is dried.
/// A force dryer that is ruled out "on the head" alone is so there, and not elsewhere.
/// "Only" with something gentler (quiet, low, cool, hand, air; towel, natural) rules out force, and
/// with a towel or in natural air every dryer, as do "no dryer" and "no drying"; not in a clause
/// about the head. Other languages, a dryer named by its noise, and "only" in a clause of its own
/// are not understood.
DryerWords read_dryer(std::string_view words);
/// Two texts about one pet: used if either uses it, spared if either spares it.
DryerWords combined(DryerWords, DryerWords);
}  // namespace furnish
