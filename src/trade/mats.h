#pragma once

#include <string_view>

namespace furnish {

inline constexpr int worst_mats = 4;

/// What a grade of matting means: 0 none, 4 felted to the skin. Common practice, no source.
/// pre: 0 <= grade <= worst_mats.
std::string_view mat_grade(int grade);
/// From here on mats are cut out rather than combed, which the owner is asked about first. Common
/// practice, no source.
inline constexpr int mats_cut_out = 3;
}  // namespace furnish
