#include "figure/shading.h"

#include <array>
#include <memory>
#include <utility>

#include "page/list.h"
#include "page/stack.h"

namespace furnish {
namespace {
struct ShadeStyle {
  std::vector<double> degrees;  ///< one hatching each, clockwise from the x axis
  Length spacing, weight;
  bool dots;
};

// By eye: apart from each other on a copier too, and from what tools are hatched with.
const std::array<ShadeStyle, shade_count> styles{{
    {{45, 135}, 1.1_mm, 0.34_mm, false},
    {{45}, 1.1_mm, 0.46_mm, false},
    {{135}, 1.7_mm, 0.24_mm, false},
    {{45}, 2.2_mm, 0.55_mm, true},
}};

/// The lower half of a disc of the width `size`.
Contour lower_half(Point centre, Length size) {
  const Length r = size / 2, reach = scaled(r, 0.5523);  // of a quarter's controls
  const Point left{centre.x - r, centre.y}, right{centre.x + r, centre.y},
      below{centre.x, centre.y + r};
  return {right,
          {{{right.x, right.y + reach}, {below.x + reach, below.y}, below},
           {{below.x - reach, below.y}, {left.x, left.y + reach}, left},
           {left, right, right}},
          true};
}

class Patch final : public Block {
 public:
  Patch(Shade what, Length height, bool marked) : what_(what), height_(height), marked_(marked) {}

  Extent measure(Length, const Setting&) const override { return {height_, height_}; }

  void place(const Rect& box, const Setting&, Frame& frame) const override {
    constexpr Length line = 0.25_mm;
    const Length mark = scaled(height_, mark_size),
                 wide = box.size.width - (marked_ ? mark + mark_gap : Length{});
    const Contour area = rectangle_contour(
        {{box.left() + line / 2, box.top() + line / 2}, {wide - line, height_ - line}});
    shade({area}, what_, frame);
    frame.marks.emplace_back(PathMark{{area}, std::nullopt, Ink::text, line, Dash::solid});
    if (!marked_) return;
    shade_mark(what_, {box.right() - mark / 2, box.top() + height_ / 2}, mark, frame);
  }

 private:
  static constexpr double mark_size = 0.5;  // of the patch's height
  static constexpr Length mark_gap = 1_mm;
  Shade what_;
  Length height_;
  bool marked_;
};
}  // namespace

void shade(const std::vector<Contour>& area, Shade what, Frame& frame) {
  const ShadeStyle& style = styles.at(static_cast<std::size_t>(what));
  for (const double degrees : style.degrees) {
    frame.marks.emplace_back(
        HatchMark{area, degrees, style.spacing, style.weight, Ink::text, style.dots});
  }
}

void shade_mark(Shade what, Point centre, Length size, Frame& frame) {
  if (what == Shade::dark) {
    frame.marks.emplace_back(
        PathMark{{dot(centre, size)}, Ink::text, std::nullopt, {}, Dash::solid});
    return;
  }
  const Length line = scaled(size, 0.14), ring = size - line;
  frame.marks.emplace_back(PathMark{{dot(centre, ring)}, Ink::paper, Ink::text, line, Dash::solid});
  frame.marks.emplace_back(
      PathMark{{lower_half(centre, ring)}, Ink::text, std::nullopt, {}, Dash::solid});
}

BlockPtr shade_patch(Shade what, Length height, bool marked) {
  return std::make_shared<Patch>(what, height, marked);
}

BlockPtr figure_key(const std::vector<KeyEntry>& entries, TextStyle style, Origin origin) {
  constexpr Length wide = 11_mm, gutter = 2.5_mm;
  std::vector<BlockPtr> rows;
  for (const KeyEntry& entry : entries) {
    if (!rows.empty()) rows.push_back(std::make_shared<Gap>(0.3, 0.15, 0));
    // In a column of its own a sign keeps its height.
    const BlockPtr sign = std::make_shared<Column>(
        std::vector<BlockPtr>{std::make_shared<Gap>(0.1, 0.1, 0), entry.sign});
    std::vector<Beside::Cell> cells{{sign, wide}, {paragraph(entry.words, style)}};
    rows.push_back(std::make_shared<Beside>(std::move(cells), gutter, Beside::Line::top));
  }
  return std::make_shared<Column>(std::move(rows), std::move(origin));
}
}  // namespace furnish
