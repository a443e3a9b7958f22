#include "page/move.h"

namespace furnish {
namespace {
Point moved(Point p, Point by) {
  return {p.x + by.x, p.y + by.y};
}

void move_contours(std::vector<Contour>& contours, Point by) {
  for (Contour& contour : contours) {
    contour.start = moved(contour.start, by);
    for (Contour::Curve& curve : contour.curves) {
      curve = {moved(curve.control1, by), moved(curve.control2, by), moved(curve.end, by)};
    }
  }
}

struct Mover {
  Point by;

  void operator()(TextMark& mark) const { mark.baseline = moved(mark.baseline, by); }
  void operator()(StrokeMark& mark) const {
    mark.from = moved(mark.from, by);
    mark.to = moved(mark.to, by);
  }
  void operator()(FillMark& mark) const { mark.area.origin = moved(mark.area.origin, by); }
  void operator()(PathMark& mark) const { move_contours(mark.contours, by); }
  void operator()(HatchMark& mark) const { move_contours(mark.area, by); }
  void operator()(ImageMark& mark) const { mark.area.origin = moved(mark.area.origin, by); }
  void operator()(LinkMark& mark) const { mark.area.origin = moved(mark.area.origin, by); }
  void operator()(OpenTag& tag) const {
    if (tag.whole) tag.whole->origin = moved(tag.whole->origin, by);
  }
  void operator()(CloseTag&) const {}
};
}  // namespace

Mark moved(Mark mark, Point by) {
  std::visit(Mover{by}, mark);
  return mark;
}
}  // namespace furnish
