#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/geometry.h"

namespace furnish {

/// A size of paper, upright. `name` is what files, options and messages call it.
struct Paper {
  std::string_view name;
  Size size;
};

/// ISO 216 in millimetres; letter from ANSI/ASME Y14.1 (8.5 × 11 in), half letter its half; index
/// cards by their inches.
inline constexpr std::array<Paper, 8> papers{{
    {"A4", {Length::mm(210), Length::mm(297)}},
    {"A5", {Length::mm(148), Length::mm(210)}},
    {"A6", {Length::mm(105), Length::mm(148)}},
    {"letter", {Length::inches(17, 2), Length::inches(11)}},
    {"half letter", {Length::inches(11, 2), Length::inches(17, 2)}},
    {"5x8 in", {Length::inches(5), Length::inches(8)}},
    {"4x6 in", {Length::inches(4), Length::inches(6)}},
    {"A3", {Length::mm(297), Length::mm(420)}},
}};

/// By name, letters of either case, "half-letter" and "5 × 8 in" too; empty if there is no such
/// paper.
std::optional<Paper> parse_paper(std::string_view);
/// All names, for messages.
std::vector<std::string_view> paper_names();
}  // namespace furnish
