#include "figure/hatching.h"

#include <algorithm>
#include <string>

#include "figure/set_text.h"

namespace furnish {
namespace {
constexpr std::array<HatchStyle, tool_kind_count> styles{{
    {45, 2.1_mm, 0.32_mm, true},   // brush: nothing is cut
    {0, 0.9_mm, 0.1_mm, false},    // blade
    {90, 1.15_mm, 0.1_mm, false},  // comb
    {45, 1.0_mm, 0.1_mm, false},   // straight
    {135, 1.4_mm, 0.1_mm, false},  // thinning
    {45, 1.05_mm, 0.36_mm, true},  // strip
}};
constexpr std::array<std::string_view, tool_kind_count> names{
    "brush", "blade", "guard comb", "shears", "thinning shears", "strip"};

/// Patches and words on lines, as the width allows.
class Legend final : public Block {
 public:
  Legend(std::vector<ToolKind> kinds, Origin origin)
      : Block(std::move(origin)), kinds_(std::move(kinds)) {}

  Extent measure(Length width, const Setting& setting) const override {
    const Lines lines = broken(width, setting);
    Extent extent{lines.pitch * lines.count, lines.pitch * lines.count, 0, lines.baseline, {}};
    extent.too_wide = std::max(Length{}, lines.widest - width);
    return extent;
  }

  void place(const Rect& box, const Setting& setting, Frame& frame) const override {
    const Lines lines = broken(box.size.width, setting);
    for (std::size_t i = 0; i < kinds_.size(); ++i) {
      const Point at{box.left() + lines.at[i].x, box.top() + lines.at[i].y};
      const Rect patch{at, {patch_width, lines.pitch - gap}};
      frame.marks.emplace_back(hatched({rectangle_contour(patch)}, kinds_[i]));
      frame.marks.emplace_back(
          PathMark{{rectangle_contour(patch)}, std::nullopt, Ink::quiet, 0.12_mm, Dash::solid});
      const TagScope tag(frame, Structure::paragraph);
      frame.marks.emplace_back(TextMark{{patch.right() + gap, at.y + lines.baseline},
                                        word(i, setting),
                                        Ink::text,
                                        std::string(furnish::name(Role::label))});
    }
  }

 private:
  static constexpr Length patch_width = 8_mm, gap = 1.4_mm, between = 4_mm;
  struct Lines {
    std::vector<Point> at;
    Length pitch, baseline, widest;
    int count = 1;
  };

  std::shared_ptr<const ShapedLine> word(std::size_t i, const Setting& setting) const {
    return set_line(std::string(to_text(kinds_[i])), Face::regular, Role::label, setting);
  }

  Lines broken(Length width, const Setting& setting) const {
    Lines out;
    if (kinds_.empty()) {
      out.count = 0;
      return out;
    }
    const Length capital = capitals(*word(0, setting));
    const Length patch_height = scaled(capital, 1.5);
    out.pitch = patch_height + gap;
    out.baseline = (patch_height + capital) / 2;
    Length x{}, y{};
    for (std::size_t i = 0; i < kinds_.size(); ++i) {
      const Length needed = patch_width + gap + word(i, setting)->width();
      out.widest = std::max(out.widest, needed);
      if (x > Length{} && x + needed > width) {
        x = Length{};
        y += out.pitch;
        ++out.count;
      }
      out.at.push_back({x, y});
      x += needed + between;
    }
    return out;
  }

  std::vector<ToolKind> kinds_;
};
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

std::string_view to_text(ToolKind kind) {
  return names[static_cast<std::size_t>(kind)];
}

const HatchStyle& hatch_style(ToolKind kind) {
  return styles[static_cast<std::size_t>(kind)];
}

HatchMark hatched(std::vector<Contour> area, ToolKind kind) {
  const HatchStyle& style = hatch_style(kind);
  return {std::move(area), style.degrees, style.spacing, style.weight, Ink::quiet, style.dots};
}


BlockPtr hatching_legend(std::vector<ToolKind> kinds, Origin origin) {
  std::ranges::sort(kinds);
  const auto again = std::ranges::unique(kinds);
  kinds.erase(again.begin(), again.end());
  return std::make_shared<Legend>(std::move(kinds), std::move(origin));
}
}  // namespace furnish
