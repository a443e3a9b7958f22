#pragma once

#include <array>
#include <string_view>

namespace furnish {

/// The papers that files and options may name; their sizes are page/paper.h's, and a test holds the
/// two lists to each other.
inline constexpr std::array<std::string_view, 7> known_papers{
    "A4", "A5", "A6", "letter", "half letter", "5x8 in", "4x6 in"};
}  // namespace furnish
