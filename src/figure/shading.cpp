#include "figure/shading.h"

#include <array>
#include <memory>
#include <utility>

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

class Patch final : public Block {
 public:
  Patch(Shade what, Length height) : what_(what), height_(height) {}

  Extent measure(Length, const Setting&) const override { return {height_, height_}; }

  void place(const Rect& box, const Setting&, Frame& frame) const override {
    constexpr Length line = 0.25_mm;
    const Contour area = rectangle_contour({{box.left() + line / 2, box.top() + line / 2},
                                            {box.size.width - line, box.size.height - line}});
    shade({area}, what_, frame);
    frame.marks.emplace_back(PathMark{{area}, std::nullopt, Ink::text, line, Dash::solid});
  }

 private:
  Shade what_;
  Length height_;
};
}  // namespace

void shade(const std::vector<Contour>& area, Shade what, Frame& frame) {
  const ShadeStyle& style = styles.at(static_cast<std::size_t>(what));
  for (const double degrees : style.degrees) {
    frame.marks.emplace_back(
        HatchMark{area, degrees, style.spacing, style.weight, Ink::text, style.dots});
  }
}

BlockPtr shade_patch(Shade what, Length height) {
  return std::make_shared<Patch>(what, height);
}

BlockPtr shade_key(const std::vector<ShadeMeaning>& meanings, TextStyle style, Origin origin) {
  constexpr Length wide = 9_mm, high = 4.4_mm, gutter = 2.5_mm;
  std::vector<BlockPtr> rows;
  for (const ShadeMeaning& meaning : meanings) {
    if (!rows.empty()) rows.push_back(std::make_shared<Gap>(0.3, 0.15));
    rows.push_back(
        std::make_shared<Beside>(std::vector<Beside::Cell>{{shade_patch(meaning.shade, high), wide},
                                                           {paragraph(meaning.words, style)}},
                                 gutter, Beside::Line::top));
  }
  return std::make_shared<Column>(std::move(rows), std::move(origin));
}
}  // namespace furnish
