#include "output/drawn_box.h"

#include <algorithm>

#include "page/shaped_line.h"

namespace furnish {
namespace {
class BoxBuilder {
 public:
  void operator()(const TextMark& mark) {
    if (mark.line == nullptr) return;
    Rect room = mark.line->logical();
    room.origin.x += mark.baseline.x;
    room.origin.y += mark.baseline.y;
    include(room);
  }
  void operator()(const StrokeMark& mark) {
    include(mark.from, mark.weight / 2);
    include(mark.to, mark.weight / 2);
  }
  void operator()(const FillMark& mark) { include(mark.area); }
  void operator()(const PathMark& mark) {
    include(mark.contours, mark.stroke ? mark.weight / 2 : Length{});
  }
  void operator()(const HatchMark& mark) { include(mark.area, {}); }
  void operator()(const ImageMark& mark) { include(mark.area); }
  void operator()(const OpenTag&) {}
  void operator()(const CloseTag&) {}
  void operator()(const LinkMark&) {}

  std::optional<Rect> box() const {
    if (!any_) return std::nullopt;
    return Rect{low_, {high_.x - low_.x, high_.y - low_.y}};
  }

 private:
  void include(const Rect& area) {
    include(area.origin, {});
    include({area.right(), area.bottom()}, {});
  }
  /// Control points may lie outside a curve, so the box may be a little too large.
  void include(const std::vector<Contour>& contours, Length around) {
    for (const Contour& contour : contours) {
      include(contour.start, around);
      for (const Contour::Curve& curve : contour.curves) {
        include(curve.control1, around);
        include(curve.control2, around);
        include(curve.end, around);
      }
    }
  }
  void include(Point p, Length around) {
    if (!any_) low_ = high_ = p;
    any_ = true;
    low_ = {std::min(low_.x, p.x - around), std::min(low_.y, p.y - around)};
    high_ = {std::max(high_.x, p.x + around), std::max(high_.y, p.y + around)};
  }

  bool any_ = false;
  Point low_{}, high_{};
};

void build(const std::vector<Part>& parts, BoxBuilder& box) {
  for (const Part& part : parts) {
    if (part.mark != nullptr) std::visit(box, *part.mark);
    if (part.element != nullptr) build(part.element->parts, box);
  }
}
}  // namespace

std::optional<Rect> drawn_box(const std::vector<Part>& parts) {
  BoxBuilder box;
  build(parts, box);
  return box.box();
}
}  // namespace furnish
