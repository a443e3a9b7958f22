#include "page/measured_rule.h"

#include <algorithm>

namespace furnish {
namespace {
constexpr Length outline = Length::mm(0.15), hatch_spacing = Length::mm(0.7),
                 hatch_weight = Length::mm(0.16);
}  // namespace

Extent MeasuredRule::measure(Length, const Setting&) const {
  const Length height = std::max(bar_height, weight_);
  return {height, height};
}

void MeasuredRule::place(const Rect& box, const Setting&, Frame& frame) const {
  const Length bottom = box.top() + std::max(bar_height, weight_);
  const Length rule = bottom - weight_ / 2;
  frame.marks.emplace_back(StrokeMark{{box.left(), rule}, {box.right(), rule}, weight_, ink_});
  if (bar_.high > box.size.width) return;
  const auto fill = [&](Length from, Length to, Length top, Length height) {
    if (to <= from) return;
    frame.marks.emplace_back(FillMark{{{box.left() + from, top}, {to - from, height}}, Ink::text});
  };
  const Length top = bottom - bar_height;
  fill({}, bar_.low, top, bar_height);
  if (bar_.high <= bar_.low) return;
  const Rect more{{box.left() + bar_.low, top}, {bar_.high - bar_.low, bar_height}};
  frame.marks.emplace_back(
      HatchMark{{rectangle_contour(more)}, 45, hatch_spacing, hatch_weight, Ink::text, false});
  // The outline lies inside, so that the bar ends where the coat does.
  fill(bar_.low, bar_.high, top, outline);
  fill(bar_.low, bar_.high, bottom - outline, outline);
  fill(std::max(bar_.low, bar_.high - outline), bar_.high, top, bar_height);
}
}  // namespace furnish
