#include "page/forms.h"

#include <algorithm>

#include "page/paragraph.h"
#include "page/stack.h"

namespace furnish {
namespace {
constexpr Length box_rule = Length::mm(0.3), least_air = Length::mm(2),
                 between_rows = Length::mm(2);
/// A box for a pen, not smaller than 4 mm (common practice, no source).
constexpr Length least_box = Length::mm(4);
/// Of a box before a line, in parts of the size: its side, the air after it, its middle above the
/// baseline, which is that of capitals; and the air under it.
constexpr double box_share = 0.75, box_air = 0.3, box_middle = 0.33;
constexpr Length under_box = Length::mm(0.6);
/// Dotted, so that it is not taken for one of the rules between rows.
constexpr Length line_weight = Length::mm(0.3);
/// From the line for the hand up to the baseline of the label before it.
constexpr Length label_lift = Length::mm(1);

Paragraph label_of(const std::string& text, Structure structure = Structure::label) {
  return {text,
          {.role = Role::label,
           .face = Face::semibold,
           .breaking = Breaking::never,
           .structure = structure}};
}

/// What it is for is read after it.
void place_box(const PathMark& box, Frame& frame) {
  const TagScope tag(frame, Structure::tick);
  frame.marks.emplace_back(box);
}

PathMark square(Point corner, Length size) {
  const Length half = box_rule / 2, low = size - half;
  const auto at = [&](Length x, Length y) { return Point{corner.x + x, corner.y + y}; };
  const auto straight = [](Point from, Point to) { return Contour::Curve{from, to, to}; };
  const Point a = at(half, half), b = at(low, half), c = at(low, low), d = at(half, low);
  return {{{a, {straight(a, b), straight(b, c), straight(c, d)}, true}},
          std::nullopt,
          Ink::text,
          box_rule,
          Dash::solid};
}
}  // namespace

/// Where the boxes stand: the same columns in every row.
struct TickRow::Plan {
  std::vector<Length> left;  ///< of each column
  std::size_t columns = 0;
  Length box, row_height, baseline;  ///< the last from a row's top
  Extent extent;
};

TickRow::TickRow(std::vector<std::string> labels, Labels where, Origin origin)
    : Block(std::move(origin)), labels_(std::move(labels)), where_(where) {}

TickRow::Plan TickRow::plan(Length width, const Setting& setting) const {
  Plan plan;
  if (labels_.empty()) return plan;
  const Length em = setting.type[Role::label].length();
  plan.box =
      where_ == Labels::below ? scaled(setting.rhythm, 1.5) : std::max(least_box, scaled(em, 1.1));
  std::vector<Length> widths;
  Extent text{};
  for (const std::string& label : labels_) {
    const Paragraph paragraph = label_of(label);
    const Length natural = paragraph.natural_width(setting);
    widths.push_back(where_ == Labels::below ? std::max(plan.box, natural)
                                             : plan.box + scaled(em, 0.4) + natural);
    text = paragraph.measure(natural, setting);
  }

  // As few rows as the labels allow, all but the last full.
  for (std::size_t rows = 1; rows <= labels_.size(); ++rows) {
    const std::size_t columns = (labels_.size() + rows - 1) / rows;
    std::vector<Length> widest(columns);
    for (std::size_t i = 0; i < widths.size(); ++i) {
      widest[i % columns] = std::max(widest[i % columns], widths[i]);
    }
    Length sum;
    for (const Length each : widest) sum += each;
    const auto gaps = static_cast<std::int64_t>(columns) - 1;
    const Length spare = width - sum - least_air * gaps;
    if (spare < Length{} && columns > 1) continue;
    plan.columns = columns;
    plan.extent.too_wide = std::max(Length{}, -spare);
    // Boxes at one distance if the labels let them; else equal air between what is wide.
    const Length step = gaps > 0 ? (width - widest.back()) / gaps : Length{};
    const bool even = std::all_of(widest.begin(), widest.end() - 1,
                                  [&](Length each) { return each + least_air <= step; });
    Length at;
    for (std::size_t i = 0; i < columns; ++i) {
      const auto n = static_cast<std::int64_t>(i);
      plan.left.push_back(even ? step * n : at);
      at +=
          widest[i] + least_air + (gaps > 0 ? spare * (n + 1) / gaps - spare * n / gaps : Length{});
    }
    const auto count = static_cast<std::int64_t>(rows);
    if (where_ == Labels::below) {
      plan.row_height = plan.box + text.wanted;
      plan.baseline = plan.box + text.baseline;
    } else {
      plan.row_height = std::max(plan.box, text.wanted);
      plan.baseline = (plan.row_height - text.wanted) / 2 + text.baseline;
    }
    plan.extent.wanted = plan.row_height * count + between_rows * (count - 1);
    break;
  }
  plan.extent.least = plan.extent.wanted;
  plan.extent.baseline = plan.baseline;
  plan.extent.last_baseline = plan.extent.wanted - plan.row_height + plan.baseline;
  return plan;
}

Extent TickRow::measure(Length width, const Setting& setting) const {
  return plan(width, setting).extent;
}

void TickRow::place(const Rect& box, const Setting& setting, Frame& frame) const {
  if (labels_.empty()) return;
  const Plan plan = this->plan(box.size.width, setting);
  const TagScope list(frame, Structure::list);
  const Length em = setting.type[Role::label].length();
  for (std::size_t i = 0; i < labels_.size(); ++i) {
    const TagScope item(frame, Structure::item);
    const Length x = box.left() + plan.left[i % plan.columns],
                 y = box.top() +
                     (plan.row_height + between_rows) * static_cast<std::int64_t>(i / plan.columns);
    const bool below = where_ == Labels::below;
    const Length drop = below ? Length{} : (plan.row_height - plan.box) / 2;
    place_box(square({x, y + drop}, plan.box), frame);
    const Paragraph label = label_of(labels_[i], Structure::paragraph);
    const Length width = label.natural_width(setting);
    const Extent extent = label.measure(width, setting);
    const Length left = below ? x : x + plan.box + scaled(em, 0.4);
    label.place({{left, y + plan.baseline - extent.baseline}, {width, extent.wanted}}, setting,
                frame);
  }
}

Ticked::Ticked(BlockPtr content, Role role) : content_(std::move(content)), role_(role) {}

Length Ticked::box(const Setting& setting) const {
  return std::max(least_box, scaled(setting.type[role_].length(), box_share));
}

Length Ticked::indent(const Setting& setting) const {
  return box(setting) + scaled(setting.type[role_].length(), box_air);
}

Length Ticked::drop(const Extent& content, const Setting& setting) const {
  const Length above = content.baseline - scaled(setting.type[role_].length(), box_middle);
  return std::max(Length{}, box(setting) / 2 - above);
}

Extent Ticked::measure(Length width, const Setting& setting) const {
  const Length indent = this->indent(setting);
  Extent extent = content_->measure(width - indent, setting);
  const Length down = drop(extent, setting);
  const Length middle = down + extent.baseline - scaled(setting.type[role_].length(), box_middle);
  const Length low = middle + box(setting) / 2 + under_box;
  extent.wanted = std::max(low, down + extent.wanted);
  extent.least = std::max(low, down + extent.least);
  extent.baseline += down;
  extent.last_baseline += down;
  return extent;
}

void Ticked::place(const Rect& area, const Setting& setting, Frame& frame) const {
  const Length indent = this->indent(setting), size = box(setting);
  const Extent content = content_->measure(area.size.width - indent, setting);
  const Length down = drop(content, setting);
  const Length middle =
      area.top() + down + content.baseline - scaled(setting.type[role_].length(), box_middle);
  place_box(square({area.left(), middle - size / 2}, size), frame);
  content_->place({{area.left() + indent, area.top() + down},
                   {area.size.width - indent, area.size.height - down}},
                  setting, frame);
}

Length Ticked::natural_width(const Setting& setting) const {
  return indent(setting) + content_->natural_width(setting);
}

BlankLine::BlankLine(std::string label, int lines, Origin origin)
    : Block(std::move(origin)), label_(std::move(label)), lines_(lines) {}

Extent BlankLine::measure(Length width, const Setting& setting) const {
  Extent extent{};
  Length first = writing_height;
  if (!label_.empty()) {
    const Paragraph label = label_of(label_);
    const Extent text = label.measure(width, setting);
    first = std::max(first, text.baseline + label_lift);
    // The hand needs a third of the line at least.
    extent.too_wide = std::max(Length{}, label.natural_width(setting) + width / 3 - width);
  }
  extent.least = extent.wanted = first + writing_height * (lines_ - 1);
  extent.baseline = first - label_lift;
  extent.last_baseline = extent.wanted - label_lift;
  return extent;
}

void BlankLine::place(const Rect& box, const Setting& setting, Frame& frame) const {
  const Extent extent = measure(box.size.width, setting);
  Length left = box.left();
  if (!label_.empty()) {
    const Paragraph label = label_of(label_);
    const Length width = label.natural_width(setting);
    const Extent text = label.measure(width, setting);
    label.place({{left, box.top() + extent.baseline - text.baseline}, {width, text.wanted}},
                setting, frame);
    left += width + setting.rhythm / 2;
  }
  const TagScope tag(frame, Structure::form);
  for (int i = 0; i < lines_; ++i) {
    const Length y =
        box.top() + extent.baseline + label_lift + writing_height * i - line_weight / 2;
    frame.marks.emplace_back(
        StrokeMark{{left, y}, {box.right(), y}, line_weight, Ink::text, Dash::dotted});
    left = box.left();
  }
}
}  // namespace furnish
