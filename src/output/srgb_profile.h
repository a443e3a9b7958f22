#pragma once

#include <string>

namespace furnish {

/// An ICC profile (version 4.2, ICC.1:2004-10) of sRGB: three colorants and the curve of IEC
/// 61966-2-1. PDF/A wants to know which RGB a file means. Always the same bytes.
std::string srgb_profile();
}  // namespace furnish
