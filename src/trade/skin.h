#pragma once

#include <string_view>

namespace furnish {

/// Whether what was found on a pet is something that no tool goes over: a growth (lump, mass, wart
/// …), broken, burnt, red or sore skin (wound, hot spot, scab, stitches, a cracked pad …), pus, a
/// swelling or a rash. Common
/// practice, no source. Reads clause by clause what is not taken back ("no lump"), each word as a
/// beginning; other languages are not understood.
bool keeps_tools_off(std::string_view finding);
}  // namespace furnish
