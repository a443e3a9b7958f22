#include "page/frame.h"

#include <fmt/format.h>

#include <cmath>

#include "page/shaped_line.h"

namespace furnish {
namespace {
/// Without iostreams and locales: "10.000", "-0.125".
std::string mm(Length length) {
  const std::int64_t um = length.um(), size = std::abs(um);
  return fmt::format("{}{}.{:03}", um < 0 ? "-" : "", size / 1000, size % 1000);
}
std::string mm(Point p) {
  return mm(p.x) + " " + mm(p.y);
}
std::string mm(const Rect& r) {
  return fmt::format("{} {} {}", mm(r.origin), mm(r.size.width), mm(r.size.height));
}

std::string_view name(Ink ink) {
  constexpr std::array<std::string_view, 4> names{"text", "quiet", "tint", "paper"};
  return names[static_cast<std::size_t>(ink)];
}
/// Black is so common that it goes without saying.
std::string after(Ink ink) {
  return ink == Ink::text ? "" : fmt::format(" {}", name(ink));
}
std::string after(Dash dash) {
  return dash == Dash::solid ? "" : dash == Dash::dashed ? " dashed" : " dotted";
}

std::string quoted(std::string_view text) {
  std::string result = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') result += '\\';
    result += c;
  }
  return result + '"';
}

std::string outline(const std::vector<Contour>& contours) {
  std::string result;
  for (const Contour& contour : contours) {
    result += fmt::format(" from {} curves {}{}", mm(contour.start), contour.curves.size(),
                          contour.closed ? " closed" : "");
  }
  return result;
}

std::string line(const TextMark& mark) {
  std::string result = fmt::format("{} {} {}", mark.role.empty() ? "text" : mark.role,
                                   mm(mark.baseline), quoted(mark.line->text()));
  const ShapedRun* last = nullptr;
  for (const ShapedRun& run : mark.line->runs()) {
    if (last && last->face == run.face && last->points == run.points &&
        last->family == run.family) {
      continue;
    }
    result += fmt::format(" {:.2f}pt {}", run.points, name(run.face));
    if (run.family != FontSet::family()) result += fmt::format(" ({})", run.family);
    last = &run;
  }
  for (const ShapedRun& run : mark.line->runs()) {
    if (run.language.empty()) continue;
    result += fmt::format(" in {} {}", run.language,
                          quoted(mark.line->text().substr(run.begin, run.end - run.begin)));
  }
  return result + after(mark.ink);
}
std::string line(const StrokeMark& mark) {
  return fmt::format("stroke {} -> {} {}{}{}", mm(mark.from), mm(mark.to), mm(mark.weight),
                     after(mark.ink), after(mark.dash));
}
std::string line(const FillMark& mark) {
  return fmt::format("fill {}{}", mm(mark.area), after(mark.ink));
}
std::string line(const PathMark& mark) {
  std::string result = "path" + outline(mark.contours);
  if (mark.fill) result += fmt::format(" fill {}", name(*mark.fill));
  if (mark.stroke) {
    result += fmt::format(" stroke {} {}{}", name(*mark.stroke), mm(mark.weight), after(mark.dash));
  }
  return result;
}
std::string line(const HatchMark& mark) {
  return fmt::format("{}{} {:g} degrees {} {}{}", mark.dots ? "dots" : "hatch", outline(mark.area),
                     mark.degrees, mm(mark.spacing), mm(mark.weight), after(mark.ink));
}
std::string line(const ImageMark& mark) {
  // Not its file's name, which may say things, in a text that an owner may be given.
  return fmt::format("image {} pixels {} {} {} {}", mm(mark.area), mark.crop.x, mark.crop.y,
                     mark.crop.width, mark.crop.height);
}
std::string line(const OpenTag& tag) {
  std::string result = fmt::format("{}:", name(tag.role));
  if (!tag.id.empty()) result += " #" + tag.id;
  if (!tag.language.empty()) result += " in " + tag.language;
  if (tag.columns > 1) result += fmt::format(" over {} columns", tag.columns);
  if (tag.bullets) result += " of points";
  if (!tag.alt.empty()) result += " " + quoted(tag.alt);
  return result;
}
std::string line(const LinkMark& mark) {
  return fmt::format("link {} #{} {}", mm(mark.area), mark.id, quoted(mark.says));
}
std::string line(const CloseTag&) {
  return {};
}
}  // namespace

std::string_view name(Structure role) {
  constexpr std::array<std::string_view, 19> names{
      "document", "section",     "title", "heading", "paragraph", "label",  "table",
      "row",      "header-cell", "cell",  "list",    "item",      "figure", "caption",
      "form",     "tick",        "sign",  "link",    "note"};
  return names[static_cast<std::size_t>(role)];
}

Contour rectangle_contour(const Rect& r) {
  const Point corners[] = {
      r.origin, {r.right(), r.top()}, {r.right(), r.bottom()}, {r.left(), r.bottom()}};
  Contour out{corners[0], {}, true};
  for (std::size_t i = 1; i < 4; ++i) {
    out.curves.push_back({corners[i - 1], corners[i], corners[i]});
  }
  return out;
}

std::string to_text(const Frame& frame) {
  std::string text = fmt::format("page {} {}\n", mm(frame.size.width), mm(frame.size.height));
  std::size_t depth = 1;
  for (const Mark& mark : frame.marks) {
    if (std::holds_alternative<CloseTag>(mark)) {
      depth = depth > 1 ? depth - 1 : 1;
      continue;
    }
    text.append(2 * depth, ' ');
    text += std::visit([](const auto& each) { return line(each); }, mark);
    text += '\n';
    if (std::holds_alternative<OpenTag>(mark)) ++depth;
  }
  return text;
}
}  // namespace furnish
