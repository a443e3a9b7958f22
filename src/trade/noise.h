#pragma once

#include <string_view>

namespace furnish {

/// The machines whose noise a text about a pet names.
struct NoiseWords {
  bool clipper = false, grinder = false, dryer = false;
};

/// How a text speaks of what frightens.
enum class Naming : bool {
  says,  ///< "panics at clipper noise", not "no fear of clipper noise"
  lists  ///< of what is not liked: whatever it names
};

/// Reads clause by clause (see trade/phrases.h) the words of noise (noise, noisy, loud, sound,
/// buzz, hum, roar, whine) with the machine that the same clause names: clipper, trimmer; grinder;
/// dryer, blower, blaster. "Noise" without a machine is that of all three. Other languages, and a
/// machine that is named without its noise, are not understood.
NoiseWords read_noise(std::string_view words, Naming);
}  // namespace furnish
