#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "page/frame.h"
#include "trade/tools.h"

namespace furnish {

/// How coat is taken off, as far as a figure tells it apart without colour.
enum class ToolKind : std::uint8_t { brush, blade, comb, straight, thinning, strip };
inline constexpr std::size_t tool_kind_count = 6;

/// Curved shears count as straight ones, blending shears as thinning ones: they cut alike, a full
/// line or every other hair.
ToolKind kind_of(const Tool&);

/// The mark that fills an area worked on with one kind of tool. No two kinds share both direction
/// and mean grey; see hatching_test.
HatchMark hatched(std::vector<Contour> area, ToolKind);
}  // namespace furnish
