#include "page/canvas.h"

#include <algorithm>

namespace furnish {

Canvas::Canvas(Size size, Draw draw, std::string alt, Origin origin)
    : Canvas(size.width / size.height, size.height, size.height, 0, std::move(draw), std::move(alt),
             std::move(origin)) {}

Canvas::Canvas(double aspect, Length least, Length most, int stretch, Draw draw, std::string alt,
               Origin origin)
    : Block(std::move(origin)),
      aspect_(aspect),
      least_(least),
      most_(std::max(least, most)),
      stretch_(stretch),
      draw_(std::move(draw)),
      alt_(std::move(alt)) {}

Extent Canvas::measure(Length width, const Setting&) const {
  Extent extent{least_, least_, stretch_};
  extent.too_wide = std::max(Length{}, scaled(least_, aspect_) - width);
  return extent;
}

void Canvas::place(const Rect& box, const Setting& setting, Frame& frame) const {
  const Length height = std::min({box.size.height, most_, scaled(box.size.width, 1 / aspect_)}),
               width = scaled(height, aspect_);
  const Rect room{
      {box.left() + (box.size.width - width) / 2, box.top() + (box.size.height - height) / 2},
      {width, height}};
  const TagScope tag(frame, Structure::figure, alt_, {}, room);
  draw_(room, setting, frame);
}
}  // namespace furnish
