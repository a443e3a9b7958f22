#include "frame_file.h"

#include <fmt/format.h>

#include "page/contrast.h"
#include "page/shaped_line.h"

namespace furnish::bench {
namespace {
double grey(Ink ink) {
  return rgb(ink).red / 255.0;
}
double grey(const std::optional<Ink>& ink) {
  return ink ? grey(*ink) : -1;
}
std::string points(Point at) {
  return fmt::format(" {:.3f} {:.3f}", at.x.in_points(), at.y.in_points());
}

struct Writer {
  std::string& out;
  void operator()(const FillMark& mark) const {
    out += fmt::format("fill {}{}{}\n", grey(mark.ink), points(mark.area.origin),
                       points({mark.area.size.width, mark.area.size.height}));
  }
  void operator()(const StrokeMark& mark) const {
    out += fmt::format("stroke {} {:.3f} {}{}{}\n", grey(mark.ink), mark.weight.in_points(),
                       static_cast<int>(mark.dash), points(mark.from), points(mark.to));
  }
  void operator()(const PathMark& mark) const {
    out += fmt::format("path {} {} {:.3f} {}", grey(mark.fill), grey(mark.stroke),
                       mark.weight.in_points(), mark.contours.size());
    for (const Contour& contour : mark.contours) {
      out += fmt::format(" {} {}{}", contour.closed ? 1 : 0, contour.curves.size(),
                         points(contour.start));
      for (const Contour::Curve& curve : contour.curves) {
        out += points(curve.control1) + points(curve.control2) + points(curve.end);
      }
    }
    out += '\n';
  }
  void operator()(const TextMark& mark) const {
    const std::string& text = mark.line->text();
    if (text.empty()) return;
    out += fmt::format("text {}{} {} {}", grey(mark.ink), points(mark.baseline),
                       mark.line->runs().size(), text.size());
    for (const ShapedRun& run : mark.line->runs()) {
      out += fmt::format(" {} {} {} {:.3f}", run.begin, run.end, static_cast<int>(run.face),
                         run.points);
    }
    out += '\n' + text + '\n';
  }
  void operator()(const HatchMark&) const {}
  void operator()(const ImageMark&) const {}
  void operator()(const OpenTag&) const {}
  void operator()(const CloseTag&) const {}
  void operator()(const LinkMark&) const {}
};
}  // namespace

std::string frame_file(const Frame& frame) {
  std::string out = "page" + points({frame.size.width, frame.size.height}) + "\n";
  for (const Mark& mark : frame.marks) std::visit(Writer{out}, mark);
  return out;
}
}  // namespace furnish::bench
