#include "figure/hatching.h"

#include <utility>

namespace furnish {
namespace {
/// How an area is filled.
struct HatchStyle {
  double degrees;          ///< counted clockwise from the x axis
  Length spacing, weight;  ///< of lines, or of dots and their grid
  bool dots;
};

// Angle, spacing and weight of lines, and dots instead of lines: apart in print, and each still a
// grey of its own from afar. By eye.
constexpr std::array<HatchStyle, tool_kind_count> styles{{
    {45, 2.1_mm, 0.32_mm, true},   // brush: nothing is cut
    {0, 0.9_mm, 0.1_mm, false},    // blade
    {90, 1.15_mm, 0.1_mm, false},  // comb
    {45, 1.0_mm, 0.1_mm, false},   // straight
    {135, 1.4_mm, 0.1_mm, false},  // thinning
    {45, 1.05_mm, 0.36_mm, true},  // strip
}};
}  // namespace

ToolKind kind_of(const Tool& tool) {
  struct Kind {
    ToolKind operator()(Brush) const { return ToolKind::brush; }
    ToolKind operator()(Clip) const { return ToolKind::blade; }
    ToolKind operator()(CombOver) const { return ToolKind::comb; }
    ToolKind operator()(Scissor s) const {
      const bool line = s.shears == Shears::straight || s.shears == Shears::curved;
      return line ? ToolKind::straight : ToolKind::thinning;
    }
    ToolKind operator()(HandStrip) const { return ToolKind::strip; }
  };
  return std::visit(Kind{}, tool);
}

HatchMark hatched(std::vector<Contour> area, ToolKind kind) {
  const HatchStyle& style = styles[static_cast<std::size_t>(kind)];
  return {std::move(area), style.degrees, style.spacing, style.weight, Ink::quiet, style.dots};
}

}  // namespace furnish
