#include "output/check_page.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>

#include "page/shaped_line.h"

namespace furnish {
namespace {
constexpr Length largest_side = Length::inches(200);  // 14,400 pt
constexpr double most_hatch_steps = 20'000;           // lines, or dots, of one mark

/// Of the box round all points of the contours.
double diagonal_mm(const std::vector<Contour>& contours) {
  if (contours.empty()) return 0;
  Point low = contours.front().start, high = low;
  const auto include = [&](Point p) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  };
  for (const Contour& contour : contours) {
    include(contour.start);
    for (const Contour::Curve& curve : contour.curves) {
      include(curve.control1);
      include(curve.control2);
      include(curve.end);
    }
  }
  return std::hypot((high.x - low.x).in_mm(), (high.y - low.y).in_mm());
}

class PageCheck {
 public:
  PageCheck(const Frame& page, DiagnosticSink& sink) : page_(page), sink_(sink) {}

  bool run() {
    check_size();
    for (const Mark& mark : page_.marks) {
      std::visit(*this, mark);
      ++number_;
    }
    if (!open_.empty()) fault("a piece of structure is not closed");
    return !faulty_;
  }

  void operator()(const TextMark& mark) {
    check(mark.baseline);
    if (mark.line == nullptr) fault("text has no line");
    check_holder();
  }
  void operator()(const StrokeMark& mark) {
    check(mark.from);
    check(mark.to);
    check_weight(mark.weight);
  }
  void operator()(const FillMark& mark) { check(mark.area); }
  void operator()(const PathMark& mark) {
    check(mark.contours);
    if (mark.stroke) check_weight(mark.weight);
  }
  void operator()(const HatchMark& mark) {
    check(mark.area);
    check_weight(mark.weight);
    const double steps = diagonal_mm(mark.area) / mark.spacing.in_mm();
    if (!std::isfinite(mark.degrees) || mark.spacing <= Length{} ||
        (mark.dots ? steps * steps : steps) > most_hatch_steps) {
      fault("hatching has no direction, or lines too close to draw");
    }
  }
  void operator()(const ImageMark& mark) {
    check(mark.area);
    if (mark.area.size.width <= Length{} || mark.area.size.height <= Length{}) {
      fault("a photo has no room");
    }
    if (mark.photo == nullptr) return fault("a photo is not there");
    const auto inside = [](std::uint32_t begin, std::uint32_t size, std::uint32_t whole) {
      return size > 0 && size <= whole && begin <= whole - size;
    };
    if (!inside(mark.crop.x, mark.crop.width, mark.photo->width) ||
        !inside(mark.crop.y, mark.crop.height, mark.photo->height)) {
      fault("a photo is cropped outside its edges");
    }
  }
  void operator()(const OpenTag& tag) {
    check_nesting(tag.role);
    if (tag.role == Structure::figure && tag.alt.empty()) {
      fault("a figure has no text that stands for it");
    }
    open_.push_back(tag.role);
  }
  void operator()(const CloseTag&) {
    if (open_.empty()) return fault("a piece of structure is closed that was not open");
    open_.pop_back();
  }
  void operator()(const LinkMark& mark) {
    check(mark.area);
    check_holder();
    if (mark.id.empty()) fault("a link leads nowhere");
    if (mark.says.empty()) fault("a link does not say where it leads");
  }

 private:
  void fault(std::string_view what) {
    faulty_ = true;
    sink_.error("bad-page", {},
                fmt::format("the page cannot be painted: {} (mark {})", what, number_));
  }

  void check_size() {
    const auto possible = [](Length side) { return side > Length{} && side <= largest_side; };
    if (!possible(page_.size.width) || !possible(page_.size.height)) {
      faulty_ = true;
      sink_.error(
          "bad-page", {},
          fmt::format("a page of {} × {} mm cannot be painted; a side has more than 0 and at "
                      "most {} mm",
                      page_.size.width.in_mm(), page_.size.height.in_mm(), largest_side.in_mm()));
    }
  }

  /// Cairo counts in 24 bits of points; what is far outside the page is a slip in any case.
  void check(Point p) {
    const auto near = [](Length at) { return at > -2 * largest_side && at < 2 * largest_side; };
    if (!near(p.x) || !near(p.y)) fault("it is far off the page");
  }
  void check(const Rect& area) {
    check(area.origin);
    check(Point{area.size.width, area.size.height});
    if (area.size.width < Length{} || area.size.height < Length{}) fault("its size is negative");
  }
  void check(const std::vector<Contour>& contours) {
    for (const Contour& contour : contours) {
      check(contour.start);
      for (const Contour::Curve& curve : contour.curves) {
        check(curve.control1);
        check(curve.control2);
        check(curve.end);
      }
    }
  }
  void check_weight(Length weight) {
    if (weight <= Length{} || weight > largest_side) fault("its line has no weight");
  }

  /// Text and links stand in the cells and items of tables and lists, not beside them.
  void check_holder() {
    const Structure holder = open_.empty() ? Structure::document : open_.back();
    if (holder == Structure::table || holder == Structure::row || holder == Structure::list) {
      fault("text or a link stands in a table or list outside its cells and items");
    }
  }

  /// What may stand in what (ISO 32000-1, 14.8.4.3).
  void check_nesting(Structure role) {
    const auto parent = open_.empty() ? std::nullopt : std::optional(open_.back());
    const auto only_in = [&](Structure inner, Structure outer) {
      return (role == inner) == (parent == outer);
    };
    const bool cell = role == Structure::cell || role == Structure::header_cell;
    if (!only_in(Structure::row, Structure::table) || !only_in(Structure::item, Structure::list) ||
        cell != (parent == Structure::row)) {
      fault("rows stand in tables, cells in rows and items in lists, and nothing else does");
    }
  }

  const Frame& page_;
  DiagnosticSink& sink_;
  std::vector<Structure> open_;
  std::size_t number_ = 0;
  bool faulty_ = false;
};
}  // namespace

bool check_page(const Frame& page, DiagnosticSink& sink) {
  return PageCheck(page, sink).run();
}
}  // namespace furnish
