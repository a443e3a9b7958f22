#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "page/block.h"
#include "page/frame.h"
#include "trade/tools.h"

namespace furnish {

/// How coat is taken off, as far as a figure tells it apart without colour.
enum class ToolKind : std::uint8_t { brush, blade, comb, straight, thinning, strip };
inline constexpr std::size_t tool_kind_count = 6;

/// Curved shears count as straight ones, blending shears as thinning ones: they cut alike, a full
/// line or every other hair.
ToolKind kind_of(const Tool&);
/// "blade", "guard comb", "shears": as in the legend.
std::string_view to_text(ToolKind);

/// How an area worked on with one kind of tool is filled. No two kinds share both direction and
/// mean grey; see hatching_test.
struct HatchStyle {
  double degrees;          ///< counted clockwise from the x axis
  Length spacing, weight;  ///< of lines, or of dots and their grid
  bool dots;
};
const HatchStyle& hatch_style(ToolKind);
/// The mark that fills `area` so.
HatchMark hatched(std::vector<Contour> area, ToolKind);

/// Which hatching is which tool: a small patch and a word for each of `kinds`, in order, one line
/// after the other as the width allows. Set in Role::label.
BlockPtr hatching_legend(std::vector<ToolKind> kinds, Origin = {});
}  // namespace furnish
