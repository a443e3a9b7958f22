#include "page/list.h"

#include <algorithm>

namespace furnish {
namespace {
/// In parts of the body size: from the edge to the text, the mark's width, and the height of its
/// middle above the baseline, which is half of a small letter's (0.486 em, TECH notes on the
/// family).
constexpr double indent = 0.95, mark = 0.5, middle = 0.243;
constexpr double between = 0.12;  ///< of the rhythm

Length indent_of(const BulletList::Item& item, const Setting& setting) {
  return item.marker == Marker::none ? Length{} : scaled(setting.type[Role::body].length(), indent);
}
}  // namespace

Contour diamond(Point centre, Length size) {
  const Length half = size / 2;
  const Point right{centre.x + half, centre.y}, below{centre.x, centre.y + half},
      left{centre.x - half, centre.y}, above{centre.x, centre.y - half};
  const auto straight = [](Point from, Point to) { return Contour::Curve{from, to, to}; };
  return {above, {straight(above, right), straight(right, below), straight(below, left)}, true};
}

Contour dot(Point centre, Length size) {
  const Length r = size / 2, k = scaled(r, 0.5523);  // of a quarter of a circle
  const Point right{centre.x + r, centre.y}, below{centre.x, centre.y + r},
      left{centre.x - r, centre.y}, above{centre.x, centre.y - r};
  return {above,
          {{{above.x + k, above.y}, {right.x, right.y - k}, right},
           {{right.x, right.y + k}, {below.x + k, below.y}, below},
           {{below.x - k, below.y}, {left.x, left.y + k}, left},
           {{left.x, left.y - k}, {above.x - k, above.y}, above}},
          true};
}

BulletList::BulletList(std::vector<Item> items, Origin origin)
    : Block(std::move(origin)), items_(std::move(items)) {}

std::vector<Block::Part> BulletList::parts(Length width, const Setting& setting) const {
  std::vector<Part> parts;
  for (const Item& item : items_) {
    parts.push_back(
        {item.content.get(), item.content->measure(width - indent_of(item, setting), setting)});
  }
  return parts;
}

Extent BulletList::measure(Length width, const Setting& setting) const {
  Extent whole{};
  for (const Part& part : parts(width, setting)) {
    if (whole.wanted > Length{}) whole.wanted += scaled(setting.rhythm, between);
    if (whole.baseline == Length{}) whole.baseline = whole.wanted + part.extent.baseline;
    whole.last_baseline = whole.wanted + part.extent.last_baseline;
    whole.wanted += part.extent.wanted;
    whole.too_wide = std::max(whole.too_wide, part.extent.too_wide);
  }
  whole.least = whole.wanted;
  return whole;
}

void BulletList::place(const Rect& box, const Setting& setting, Frame& frame) const {
  const std::vector<Part> all = parts(box.size.width, setting);
  OpenTag opened{Structure::list, {}, {}};
  opened.bullets =
      std::ranges::any_of(items_, [](const Item& item) { return item.marker == Marker::dot; });
  const TagScope list(frame, std::move(opened));
  const Length size = setting.type[Role::body].length();
  Length top = box.top();
  for (std::size_t i = 0; i < items_.size(); ++i) {
    const TagScope tag(frame, Structure::item);
    const Length shift = indent_of(items_[i], setting);
    if (items_[i].marker != Marker::none) {
      const bool differs = items_[i].marker == Marker::diamond;
      const Length half = scaled(size, mark) / 2;
      const Point centre{box.left() + half, top + all[i].extent.baseline - scaled(size, middle)};
      std::optional<TagScope> sign;
      if (differs && !items_[i].explains) sign.emplace(frame, Structure::sign);
      const bool ring = items_[i].marker == Marker::ring;
      frame.marks.emplace_back(PathMark{
          {differs ? diamond(centre, half * 2) : dot(centre, scaled(half, ring ? 1.4 : 1.2))},
          ring ? std::optional<Ink>() : Ink::text,
          ring ? Ink::text : std::optional<Ink>(),
          ring ? 0.25_mm : Length{},
          Dash::solid});
    }
    items_[i].content->place(
        {{box.left() + shift, top}, {box.size.width - shift, all[i].extent.wanted}}, setting,
        frame);
    top += all[i].extent.wanted + scaled(setting.rhythm, between);
  }
}
}  // namespace furnish
