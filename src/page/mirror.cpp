#include "page/mirror.h"

#include "page/move.h"
#include "page/shaped_line.h"

namespace furnish {
namespace {
/// Turns marks over at the middle of a page that is so wide.
class Mirror {
 public:
  explicit Mirror(Length width) : width_(width) {}

  void operator()(TextMark& mark) const {
    const Rect room = mark.line->logical();
    mark.baseline.x = width_ - mark.baseline.x - room.left() - room.right();
  }
  void operator()(StrokeMark& mark) const {
    mark.from = over(mark.from);
    mark.to = over(mark.to);
  }
  void operator()(FillMark& mark) const { mark.area = over(mark.area); }
  void operator()(PathMark& mark) const { turn(mark.contours); }
  // The direction of its lines tells the tool, so it stays.
  void operator()(HatchMark& mark) const { turn(mark.area); }
  void operator()(ImageMark& mark) const { mark.area = over(mark.area); }
  void operator()(LinkMark& mark) const { mark.area = over(mark.area); }
  void operator()(OpenTag&) const {}
  void operator()(CloseTag&) const {}

  Rect over(Rect area) const {
    area.origin.x = width_ - area.right();
    return area;
  }

 private:
  Point over(Point p) const { return {width_ - p.x, p.y}; }
  void turn(std::vector<Contour>& contours) const {
    for (Contour& contour : contours) {
      contour.start = over(contour.start);
      for (Contour::Curve& curve : contour.curves) {
        curve = {over(curve.control1), over(curve.control2), over(curve.end)};
      }
    }
  }
  Length width_;
};
}  // namespace

Frame mirrored(Frame frame) {
  const Mirror mirror(frame.size.width);
  int depth = 0, whole_since = 0;  ///< depth of the drawing that moves as it is; 0: none
  int caption_since = 0;           ///< of the words under it, which turn over; 0: none
  Point by;
  for (Mark& mark : frame.marks) {
    if (const auto* const tag = std::get_if<OpenTag>(&mark)) {
      ++depth;
      if (tag->whole && whole_since == 0) {
        whole_since = depth;
        by = {mirror.over(*tag->whole).left() - tag->whole->left(), {}};
      }
      if (tag->role == Structure::caption && caption_since == 0) caption_since = depth;
    }
    if (whole_since > 0 && caption_since == 0) {
      mark = moved(std::move(mark), by);
    } else {
      std::visit(mirror, mark);
    }
    if (std::holds_alternative<CloseTag>(mark)) {
      if (whole_since == depth) whole_since = 0;
      if (caption_since == depth) caption_since = 0;
      --depth;
    }
  }
  return frame;
}
}  // namespace furnish
