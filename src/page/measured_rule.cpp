#include "page/measured_rule.h"

#include <algorithm>

namespace furnish {
namespace {
constexpr Length outline = Length::mm(0.15), hatch_spacing = Length::mm(0.7),
                 hatch_weight = Length::mm(0.16), tick = Length::mm(0.3),
                 centimetre = Length::mm(10);
}  // namespace

Extent MeasuredRule::measure(Length, const Setting&) const {
  const Length height = bar_height + air + weight_;
  return {height, height};
}

void MeasuredRule::place(const Rect& box, const Setting&, Frame& frame) const {
  const Length top = box.top(), floor = top + bar_height + air, rule = floor + weight_ / 2;
  frame.marks.emplace_back(StrokeMark{{box.left(), rule}, {box.right(), rule}, weight_, ink_});
  if (bar_.high > box.size.width) return;
  const auto fill = [&](Length from, Length to, Length at, Length height, Ink ink = Ink::text) {
    if (to <= from) return;
    frame.marks.emplace_back(FillMark{{{box.left() + from, at}, {to - from, height}}, ink});
  };
  fill({}, bar_.low, top, bar_height);
  // Up to the very end there is no notch, which would take the tick away.
  for (Length at = centimetre; at + notch < bar_.low; at += centimetre) {
    fill(at - notch / 2, at + notch / 2, top, notch_depth, Ink::paper);
  }
  const Length from = std::max(Length{}, bar_.high - tick);
  if (bar_.high > bar_.low) {
    const Rect more{{box.left() + bar_.low, top}, {bar_.high - bar_.low, bar_height}};
    frame.marks.emplace_back(
        HatchMark{{rectangle_contour(more)}, 45, hatch_spacing, hatch_weight, Ink::text, false});
    // The outline lies inside, so that the bar ends where the coat does.
    fill(bar_.low, bar_.high, top, outline);
    fill(bar_.low, bar_.high, top + bar_height - outline, outline);
    fill(std::max(bar_.low, from), bar_.high, top, bar_height);
  }
  fill(from, bar_.high, top + bar_height, floor - top - bar_height);
}
}  // namespace furnish
