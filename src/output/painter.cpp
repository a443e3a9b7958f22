#include "output/painter.h"

#include <fmt/format.h>
#include <pango/pangocairo.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "output/cairo_handle.h"
#include "output/photo_mark.h"
#include "output/show_line.h"
#include "output/squares.h"
#include "output/structure.h"
#include "page/contrast.h"
#include "page/shaped_line.h"

namespace furnish {
namespace {
/// Keeps cairo's pen, clip and ink as they were.
class Saved {
 public:
  explicit Saved(cairo_t* cr) : cr_(cr) { cairo_save(cr_); }
  Saved(const Saved&) = delete;
  Saved& operator=(const Saved&) = delete;
  ~Saved() { cairo_restore(cr_); }

 private:
  cairo_t* cr_;
};

/// Opens a tag of cairo's for the length of a scope.
class TagInFile {
 public:
  TagInFile(cairo_t* cr, const char* name, const std::string& attributes = {})
      : cr_(cr), name_(name) {
    cairo_tag_begin(cr_, name_, attributes.c_str());
  }
  TagInFile(const TagInFile&) = delete;
  TagInFile& operator=(const TagInFile&) = delete;
  ~TagInFile() { cairo_tag_end(cr_, name_); }

 private:
  cairo_t* cr_;
  const char* name_;
};

/// As cairo reads strings in attributes.
std::string in_quotes(std::string_view text) {
  std::string out = "'";
  for (const char c : text) {
    if (c == '\'' || c == '\\') out += '\\';
    out += c;
  }
  return out + "'";
}

/// Where a link to a mark should scroll to: its top left, roughly.
std::optional<Point> place_of(const Mark& mark) {
  if (const auto* text = std::get_if<TextMark>(&mark)) {
    return Point{text->baseline.x, text->baseline.y - text->line->ascent()};
  }
  if (const auto* stroke = std::get_if<StrokeMark>(&mark)) return stroke->from;
  if (const auto* fill = std::get_if<FillMark>(&mark)) return fill->area.origin;
  if (const auto* image = std::get_if<ImageMark>(&mark)) return image->area.origin;
  if (const auto* path = std::get_if<PathMark>(&mark)) {
    if (!path->contours.empty()) return path->contours.front().start;
  }
  return std::nullopt;
}

std::optional<Point> place_of(const std::vector<Part>& parts) {
  for (const Part& part : parts) {
    const auto place = part.mark ? place_of(*part.mark) : place_of(part.element->parts);
    if (place) return place;
  }
  return std::nullopt;
}

/// True of a file that holds curves as curves and photos as their own files; a picture has pixels.
bool is_file(cairo_surface_t* target) {
  const auto kind = cairo_surface_get_type(target);
  return kind == CAIRO_SURFACE_TYPE_PDF || kind == CAIRO_SURFACE_TYPE_SVG;
}

class Painter {
 public:
  Painter(cairo_t* cr, const TagNames* names)
      : cr_(cr),
        names_(names),
        keeps_curves_(is_file(cairo_get_target(cr))),
        photos_(keeps_curves_) {}

  void tagged(const std::vector<Part>& parts) {
    for (const Part& part : parts) {
      const auto* const text = part.mark != nullptr ? std::get_if<TextMark>(part.mark) : nullptr;
      if (text != nullptr) {
        show(*text, part.range);
      } else if (part.mark != nullptr) {
        std::visit(*this, *part.mark);
      } else {
        tagged(*part.element);
      }
    }
  }

  void operator()(const TextMark& mark) { show(mark, {}); }

  void operator()(const StrokeMark& mark) {
    const Saved saved(cr_);
    move_to(mark.from);
    line_to(mark.to);
    stroke(mark.weight, mark.ink, mark.dash);
  }

  void operator()(const FillMark& mark) {
    set_ink(mark.ink);
    rectangle(mark.area);
    cairo_fill(cr_);
  }

  void operator()(const PathMark& mark) {
    const Saved saved(cr_);
    if (names_ != nullptr && names_->codes != nullptr) {
      if (const auto squares = squares_of(mark)) return hold_place(*squares, *mark.fill);
    }
    trace(mark.contours);
    cairo_set_fill_rule(cr_, CAIRO_FILL_RULE_EVEN_ODD);
    if (mark.fill) {
      set_ink(*mark.fill);
      cairo_fill_preserve(cr_);
    }
    if (mark.stroke) {
      cairo_set_line_join(cr_, CAIRO_LINE_JOIN_ROUND);
      if (mark.dash == Dash::solid) cairo_set_line_cap(cr_, CAIRO_LINE_CAP_ROUND);
      ease_tolerance(mark.weight);
      stroke(mark.weight, *mark.stroke, mark.dash);
    }
    cairo_new_path(cr_);
  }

  void operator()(const HatchMark& mark) {
    const Saved saved(cr_);
    trace(mark.area);
    double x1 = 0, y1 = 0, x2 = 0, y2 = 0;
    cairo_path_extents(cr_, &x1, &y1, &x2, &y2);
    cairo_set_fill_rule(cr_, CAIRO_FILL_RULE_EVEN_ODD);
    cairo_clip(cr_);
    ease_tolerance(mark.weight);
    if (x1 < x2 && y1 < y2) hatch(mark, x1, y1, x2, y2);
    if (mark.dots) cairo_set_line_cap(cr_, CAIRO_LINE_CAP_ROUND);
    stroke(mark.weight, mark.ink, Dash::solid);
  }

  void operator()(const ImageMark& mark) { photos_.draw(mark, cr_); }

  void operator()(const OpenTag&) {}
  void operator()(const CloseTag&) {}
  void operator()(const LinkMark&) {}

 private:
  void show(const TextMark& mark, TextRange range) {
    set_ink(mark.ink);
    move_to(mark.baseline);
    show_line(cr_, *mark.line, range.begin, range.end);
    cairo_new_path(cr_);
  }

  void tagged(const Element& element) {
    if (element.opened != nullptr && !element.opened->id.empty()) destination(element);
    std::string attributes;
    if (element.link != nullptr) {
      const Rect& area = element.link->area;
      attributes =
          fmt::format("rect=[{:.3f} {:.3f} {:.3f} {:.3f}] dest={}", area.left().in_points(),
                      area.top().in_points(), area.size.width.in_points(),
                      area.size.height.in_points(), in_quotes(names_->target(element.link->id)));
    }
    const TagInFile tag(cr_, cairo_name(element.tag), attributes);
    tagged(element.parts);
  }

  void destination(const Element& element) {
    const Point place = place_of(element.parts).value_or(Point{});
    const TagInFile tag(
        cr_, CAIRO_TAG_DEST,
        fmt::format("name={} x={:.3f} y={:.3f}", in_quotes(names_->place(element.opened->id)),
                    place.x.in_points(), place.y.in_points()));
  }

  void move_to(Point p) { cairo_move_to(cr_, p.x.in_points(), p.y.in_points()); }
  void line_to(Point p) { cairo_line_to(cr_, p.x.in_points(), p.y.in_points()); }
  void rectangle(const Rect& r) {
    cairo_rectangle(cr_, r.left().in_points(), r.top().in_points(), r.size.width.in_points(),
                    r.size.height.in_points());
  }

  /// A mask in the place of a form, as wide as it has number.
  void hold_place(const Squares& squares, Ink ink) {
    names_->codes->push_back(squares);
    const auto number = static_cast<int>(names_->codes->size());
    const CairoSurface mask(cairo_image_surface_create(CAIRO_FORMAT_A1, number, 1));
    unsigned char* const bits = cairo_image_surface_get_data(mask.get());
    if (bits == nullptr) return;
    *bits = 0xFF;  // cairo leaves out what it knows to be empty
    cairo_surface_mark_dirty(mask.get());
    const Rect& box = squares.box;
    cairo_translate(cr_, box.left().in_points(), box.top().in_points());
    cairo_scale(cr_, box.size.width.in_points() / number, box.size.height.in_points());
    set_ink(ink);
    const CairoPattern pattern(cairo_pattern_create_for_surface(mask.get()));
    cairo_pattern_set_filter(pattern.get(), CAIRO_FILTER_FAST);
    cairo_mask(cr_, pattern.get());
  }

  void trace(const std::vector<Contour>& contours) {
    for (const Contour& contour : contours) {
      move_to(contour.start);
      Point at = contour.start;
      for (const Contour::Curve& curve : contour.curves) {
        if (curve.control1 == at && curve.control2 == curve.end) {
          line_to(curve.end);
        } else {
          cairo_curve_to(cr_, curve.control1.x.in_points(), curve.control1.y.in_points(),
                         curve.control2.x.in_points(), curve.control2.y.in_points(),
                         curve.end.x.in_points(), curve.end.y.in_points());
        }
        at = curve.end;
      }
      if (contour.closed) cairo_close_path(cr_);
    }
  }

  void set_ink(Ink ink) {
    const Rgb c = rgb(ink);
    cairo_set_source_rgb(cr_, c.red / 255.0, c.green / 255.0, c.blue / 255.0);
  }

  void stroke(Length weight, Ink ink, Dash dash) {
    const double pt = weight.in_points();
    set_ink(ink);
    cairo_set_line_width(cr_, pt);
    if (dash == Dash::dashed) {
      const double lengths[] = {6 * pt, 4 * pt};
      cairo_set_dash(cr_, lengths, 2, 0);
    } else if (dash == Dash::dotted) {
      const double lengths[] = {0, 3 * pt};
      cairo_set_line_cap(cr_, CAIRO_LINE_CAP_ROUND);
      cairo_set_dash(cr_, lengths, 2, 0);
    }
    cairo_stroke(cr_);
  }

  /// Cairo flattens curves to find what a stroke covers, though the file keeps them: a coarse
  /// flattening gives the same bytes in a third less time. Kept under the line's width, so that
  /// none is missed. A picture's pixels need cairo's own tolerance.
  void ease_tolerance(Length weight) {
    if (keeps_curves_) cairo_set_tolerance(cr_, std::clamp(weight.in_points() / 2, 0.1, 0.5));
  }

  /// Lines or dots over a box, on a grid that begins at the page's corner, so that the hatching of
  /// neighbours meets.
  void hatch(const HatchMark& mark, double x1, double y1, double x2, double y2) {
    const double angle = mark.degrees * std::numbers::pi / 180;
    const double c = std::cos(angle), s = std::sin(angle), step = mark.spacing.in_points();
    // `along` runs with the lines, `across` from line to line; both turned from x and y.
    const double along_mid = ((x1 + x2) * c + (y1 + y2) * s) / 2;
    const double across_mid = ((y1 + y2) * c - (x1 + x2) * s) / 2;
    const double along_half = (std::abs((x2 - x1) * c) + std::abs((y2 - y1) * s)) / 2;
    const double across_half = (std::abs((x2 - x1) * s) + std::abs((y2 - y1) * c)) / 2;
    const auto move = [&](double along, double across) {
      cairo_move_to(cr_, along * c - across * s, along * s + across * c);
    };
    const auto line_to_end = [&](double along, double across) {
      cairo_line_to(cr_, along * c - across * s, along * s + across * c);
    };
    // A file says a row of dots as a line with dashes of no length, which is a fiftieth of it.
    const double dashes[] = {0, step};
    const bool rows = mark.dots && keeps_curves_;
    if (rows) cairo_set_dash(cr_, dashes, 2, 0);
    const double last = std::floor((across_mid + across_half) / step);
    for (double line = std::ceil((across_mid - across_half) / step); line <= last; ++line) {
      const double across = line * step;
      if (!mark.dots) {
        move(along_mid - along_half, across);
        line_to_end(along_mid + along_half, across);
        continue;
      }
      const double first_dot = std::ceil((along_mid - along_half) / step),
                   last_dot = std::floor((along_mid + along_half) / step);
      if (rows && first_dot <= last_dot) {
        move(first_dot * step, across);
        line_to_end((last_dot + 0.5) * step, across);  // into the gap behind the last dot
        continue;
      }
      for (double dot = first_dot; dot <= last_dot; ++dot) {
        move(dot * step, across);
        cairo_close_path(cr_);
      }
    }
  }

  cairo_t* cr_;
  const TagNames* names_;
  bool keeps_curves_;
  PhotoMarks photos_;
};
}  // namespace

PageSize in_points(Size size) {
  return {size.width.in_points(), size.height.in_points()};
}

void paint(const Frame& page, cairo_t* cr, const TagNames* names) {
  const Saved saved(cr);
  Painter painter(cr, names);
  if (names != nullptr) {
    painter.tagged(structure_of(page));
  } else {
    for (const Mark& mark : page.marks) std::visit(painter, mark);
  }
}
}  // namespace furnish
