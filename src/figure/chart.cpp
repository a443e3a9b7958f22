#include "figure/chart.h"

#include <algorithm>
#include <cmath>

#include "figure/label_places.h"
#include "figure/set_text.h"
#include "page/list.h"

namespace furnish {
namespace {
constexpr Length line_weight = 0.3_mm, ring_weight = 0.25_mm, axis_weight = 0.12_mm,
                 reference_weight = 0.2_mm, leader_weight = 0.1_mm, radius = 0.7_mm, clear = 0.7_mm,
                 tick = 1_mm, between_dates = 2_mm, beside_number = 0.8_mm, visit_gap = 0.4_mm;
constexpr double least_span = 0.2;  // of the largest value

std::string alt_of(const ChartInput& input) {
  std::string out = input.alt;
  for (const ChartPoint& point : input.points) {
    if (!out.empty()) out += &point == &input.points.front() ? ": " : "; ";
    out += point.label;
    if (!point.date.empty()) out += " (" + point.date + ")";
  }
  if (!input.reference_label.empty()) out += "; " + input.reference_label;
  return out;
}

/// Capitals, with what letters have above and below them, in parts of their height: 0.05 and 0.2 em
/// in the bundled family, measured.
constexpr double above_capitals = 1.1, with_tails = 1.45;

/// Letters of other scripts may hang lower.
Size size_of(const ShapedLine& line) {
  const Length hangs = scaled(capitals(line), above_capitals) + line.ink().bottom();
  return {line.width(), std::max(scaled(capitals(line), with_tails), hangs)};
}

/// With air on both sides, so that two numbers side by side are two.
Size room_of(const ShapedLine& number) {
  const Size size = size_of(number);
  return {size.width + beside_number * 2, size.height};
}

/// One chart in its box.
class Plot {
 public:
  Plot(const ChartInput& input, const Rect& box, const Setting& setting)
      : input_(input), box_(box), setting_(setting) {
    for (const ChartPoint& point : input.points) {
      labels_.push_back(set_line(point.label, point.after ? Face::regular : Face::semibold,
                                 Role::label, setting));
      dates_.push_back(set_line(point.date, Face::regular, Role::label, setting));
    }
    const Length text = size_of(*dates_.front()).height;
    axis_ = box.bottom() - text - tick - 0.6_mm;
    scale();
    put_in_order();
  }

  void draw(Frame& frame) const {
    if (input_.steps_from) draw_steps(frame);
    draw_axis(frame);
    draw_reference(frame);
    if (!input_.steps_from) draw_line(frame);
    draw_labels(frame);
  }

 private:
  void scale() {
    const auto [low, high] = std::ranges::minmax(input_.points, {}, &ChartPoint::value);
    low_ = low.value;
    high_ = high.value;
    if (input_.reference) {
      low_ = std::min(low_, *input_.reference);
      high_ = std::max(high_, *input_.reference);
    }
    if (input_.steps_from) low_ = std::min(low_, 0.0);
    const double span = std::max(std::abs(low_), std::abs(high_)) * least_span;
    if (high_ - low_ < span) {
      const double middle = (low_ + high_) / 2;
      low_ = middle - span / 2;
      high_ = middle + span / 2;
    }
    if (!(high_ > low_)) high_ = low_ + 1;  // nothing but zeros

    first_ = input_.steps_from ? std::min(*input_.steps_from, input_.points.front().day)
                               : input_.points.front().day;
    last_ = input_.points.back().day;
    // Half of each outer date stands beyond its point.
    left_ = box_.left() + std::max(dates_.front()->width(), room_of(*labels_.front()).width) / 2;
    if (input_.steps_from) left_ = box_.left();
    right_ = box_.right() - std::max(dates_.back()->width(), room_of(*labels_.back()).width) / 2;
    // Room for a number above the highest and one below the lowest.
    const Length text = size_of(*labels_.front()).height + radius + clear * 2;
    top_ = box_.top() + text;
    bottom_ = input_.steps_from ? axis_ : std::max(top_, axis_ - text);
  }

  Length x(Date day) const {
    if (first_ == last_) return (left_ + right_) / 2;
    return left_ + scaled(right_ - left_, static_cast<double>((day - first_).count()) /
                                              static_cast<double>((last_ - first_).count()));
  }
  Length y(double value) const {
    return bottom_ - scaled(bottom_ - top_, (value - low_) / (high_ - low_));
  }
  Point at(const ChartPoint& point) const { return {x(point.day), y(point.value)}; }

  /// From where a step begins to where it ends.
  std::pair<Point, Point> step(std::size_t i) const {
    const ChartPoint& point = input_.points[i];
    const Date from = i == 0 ? first_ : input_.points[i - 1].day;
    return {{x(from), y(point.value)}, at(point)};
  }

  void draw_axis(Frame& frame) const {
    frame.marks.emplace_back(StrokeMark{
        {box_.left(), axis_}, {box_.right(), axis_}, axis_weight, Ink::quiet, Dash::solid});
    std::vector<Rect> taken;
    const Length baseline = axis_ + tick + 0.6_mm + capitals(*dates_.front());
    for (const std::size_t i : order_) {
      const Length middle = x(input_.points[i].day);
      frame.marks.emplace_back(
          StrokeMark{{middle, axis_}, {middle, axis_ + tick}, axis_weight, Ink::quiet});
      const ShapedLine& date = *dates_[i];
      if (date.text().empty()) continue;
      const Length left = std::clamp(middle - date.width() / 2, box_.left(),
                                     std::max(box_.left(), box_.right() - date.width()));
      const Rect place{{left, axis_}, {date.width() + between_dates, 1_mm}};
      if (std::ranges::any_of(taken, [&](const Rect& other) { return overlap(place, other); })) {
        continue;
      }
      taken.push_back(place);
      put(dates_[i], {left, baseline}, frame);
    }
  }

  void draw_reference(Frame& frame) const {
    if (!input_.reference) return;
    const Length height = y(*input_.reference);
    frame.marks.emplace_back(StrokeMark{
        {box_.left(), height}, {box_.right(), height}, reference_weight, Ink::text, Dash::dashed});
  }

  void draw_line(Frame& frame) const {
    PathMark path{{{at(input_.points.front()), {}, false}},
                  std::nullopt,
                  Ink::text,
                  line_weight,
                  Dash::solid};
    PathMark dots{{}, Ink::text, std::nullopt, {}, Dash::solid};
    Point before = path.contours.front().start;
    for (const ChartPoint& point : input_.points) {
      const Point here = at(point);
      if (here != before) path.contours.front().curves.push_back({before, here, here});
      dots.contours.push_back(dot(here, radius * 2));
      before = here;
    }
    if (!path.contours.front().curves.empty()) frame.marks.emplace_back(std::move(path));
    // Each by itself: where dots overlap, even and odd would leave holes.
    for (std::size_t i = 0; i < dots.contours.size(); ++i) {
      const bool open = input_.points[i].after;
      PathMark mark{{std::move(dots.contours[i])}, Ink::text, std::nullopt, {}, Dash::solid};
      if (open) {
        mark.fill = Ink::paper;
        mark.stroke = Ink::text;
        mark.weight = ring_weight;
      }
      frame.marks.push_back(std::move(mark));
    }
  }

  /// One line that goes up and down at the visits, over a light ground that stands on the axis.
  void draw_steps(Frame& frame) const {
    Contour line{step(0).first, {}, false};
    Point before = line.start;
    const auto go = [&](Point to) {
      if (to != before) line.curves.push_back({before, to, to});
      before = to;
    };
    for (std::size_t i = 0; i < input_.points.size(); ++i) {
      const auto [from, to] = step(i);
      go(from);
      go(to);
    }
    Contour ground = line;
    const Point end{before.x, axis_}, begin{line.start.x, axis_};
    ground.curves.push_back({before, end, end});
    ground.curves.push_back({end, begin, begin});
    ground.closed = true;
    frame.marks.emplace_back(
        PathMark{{std::move(ground)}, Ink::tint, std::nullopt, {}, Dash::solid});
    // A gap at each visit, so that equal times are still told apart.
    for (std::size_t i = 1; i < input_.points.size(); ++i) {
      const Point left = step(i - 1).second, right = step(i).first;
      const Length top = std::max(left.y, right.y);
      frame.marks.emplace_back(
          FillMark{{{left.x - visit_gap / 2, top}, {visit_gap, axis_ - top}}, Ink::paper});
    }
    frame.marks.emplace_back(
        PathMark{{std::move(line)}, std::nullopt, Ink::text, line_weight, Dash::solid});
  }

  /// The outer ones, then the extremes, then the rest in time.
  void put_in_order() {
    const std::size_t count = input_.points.size();
    const auto add = [&](std::size_t i) {
      if (std::ranges::find(order_, i) == order_.end()) order_.push_back(i);
    };
    const auto begin = input_.points.begin();
    add(count - 1);
    add(0);
    const auto [low, high] = std::ranges::minmax_element(input_.points, {}, &ChartPoint::value);
    add(static_cast<std::size_t>(high - begin));
    add(static_cast<std::size_t>(low - begin));
    musts_ = order_.size();
    for (std::size_t i = 0; i < count; ++i) add(i);
  }

  void draw_labels(Frame& frame) const {
    LabelRoom room{{box_.origin, {box_.size.width, axis_ - box_.top()}}, {}, {}, {}, radius, clear};
    std::vector<LabelWish> wishes;
    std::shared_ptr<const ShapedLine> reference;
    if (input_.reference) {
      const Length height = y(*input_.reference);
      room.lines.push_back({{box_.left(), height}, {box_.right(), height}});
      if (!input_.reference_label.empty()) {
        reference = set_line(input_.reference_label, Face::regular, Role::label, setting_);
      }
    }
    for (std::size_t i = 0; i < input_.points.size(); ++i) {
      if (input_.steps_from) {
        const auto [from, to] = step(i);
        room.lines.push_back({from, to});
        if (i > 0) room.lines.push_back({step(i - 1).second, from});
      } else {
        room.dots.push_back(at(input_.points[i]));
        if (i > 0) room.lines.push_back({at(input_.points[i - 1]), at(input_.points[i])});
      }
    }
    for (std::size_t n = 0; n < order_.size(); ++n) {
      const std::size_t i = order_[n];
      Point anchor = at(input_.points[i]);
      if (input_.steps_from) anchor.x = (step(i).first.x + anchor.x) / 2;
      wishes.push_back({anchor, room_of(*labels_[i]), n < musts_});
    }
    if (reference) {
      wishes.insert(wishes.begin() + static_cast<std::ptrdiff_t>(musts_),
                    {{box_.right() - reference->width() / 2, y(*input_.reference)},
                     size_of(*reference),
                     true});
    }
    const auto places = place_labels(wishes, room);
    for (std::size_t n = 0, next = 0; n < places.size(); ++n) {
      const bool is_reference = reference && n == musts_;
      const auto& line = is_reference ? reference : labels_[order_[next++]];
      if (!places[n]) continue;
      lead(*places[n], wishes[n].at, frame);
      const Length left = places[n]->left() + (is_reference ? Length{} : beside_number);
      put(line, {left, places[n]->top() + scaled(capitals(*line), above_capitals)}, frame);
    }
  }

  /// A thin line to a number that had to stand off.
  static void lead(const Rect& label, Point to, Frame& frame) {
    const Point near{std::clamp(to.x, label.left(), label.right()),
                     std::clamp(to.y, label.top(), label.bottom())};
    const double away = std::hypot((near.x - to.x).in_mm(), (near.y - to.y).in_mm());
    if (away > 3) frame.marks.emplace_back(StrokeMark{near, to, leader_weight, Ink::text});
  }

  static void put(const std::shared_ptr<const ShapedLine>& line, Point baseline, Frame& frame) {
    frame.marks.emplace_back(TextMark{baseline, line, Ink::text, std::string(name(Role::label))});
  }

  const ChartInput& input_;
  Rect box_;
  const Setting& setting_;
  std::vector<std::shared_ptr<const ShapedLine>> labels_, dates_;
  double low_ = 0, high_ = 1;
  Date first_, last_;
  Length left_, right_, top_, bottom_, axis_;
  std::vector<std::size_t> order_;  ///< of points, most important first
  std::size_t musts_ = 0;           ///< how many of them have their numbers always
};

class Chart final : public Block {
 public:
  Chart(ChartInput input, Length height, Origin origin)
      : Block(std::move(origin)), input_(std::move(input)), height_(height) {}

  Extent measure(Length width, const Setting& setting) const override {
    Extent extent{height_, height_};
    const auto wide = [&](const std::string& text) {
      return set_line(text, Face::regular, Role::label, setting)->width();
    };
    Length outer = wide(input_.points.front().date);
    if (input_.points.size() > 1) outer += between_dates + wide(input_.points.back().date);
    extent.too_wide = std::max(Length{}, outer - width);
    return extent;
  }

  void place(const Rect& box, const Setting& setting, Frame& frame) const override {
    const TagScope tag(frame, Structure::figure, alt_of(input_));
    Plot(input_, {box.origin, {box.size.width, height_}}, setting).draw(frame);
  }

 private:
  ChartInput input_;
  Length height_;
};
}  // namespace

BlockPtr line_chart(ChartInput input, Length height, Origin origin) {
  return std::make_shared<Chart>(std::move(input), height, std::move(origin));
}
}  // namespace furnish
