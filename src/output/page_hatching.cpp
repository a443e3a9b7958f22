#include "output/page_hatching.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace furnish {
namespace {
constexpr double points_a_twentieth = 72 / 25.4 / 20;
/// Points that cairo's numbers may be off.
constexpr double off_grid_at_most = 0.02;

/// Of a direction: along the lines, and from line to line.
struct TurnedAxes {
  explicit TurnedAxes(int degrees)
      : c(std::cos(degrees * std::numbers::pi / 180)),
        s(std::sin(degrees * std::numbers::pi / 180)) {}
  double along(double x, double y) const { return x * c + y * s; }
  double across(double x, double y) const { return y * c - x * s; }
  double c, s;
};
}  // namespace

std::string PageHatching::content(double width, double height) const {
  const TurnedAxes turned(degrees);
  double begin = 0, end = 0, first = 0, last = 0;
  for (const double x : {0., width}) {
    for (const double y : {0., height}) {
      begin = std::min(begin, turned.along(x, y));
      end = std::max(end, turned.along(x, y));
      first = std::min(first, turned.across(x, y));
      last = std::max(last, turned.across(x, y));
    }
  }
  const double step = twentieths * points_a_twentieth;
  std::string out;
  for (double line = std::ceil(first / step); line * step <= last; ++line) {
    const double across = line * step;
    constexpr double parts = 1000;
    for (const double along : {begin, end}) {
      append(out, along * turned.c - across * turned.s, parts);
      out += ' ';
      append(out, along * turned.s + across * turned.c, parts);
      out += along == begin ? " m " : " l\n";
    }
  }
  return out + "S\n";
}

std::optional<PageHatching> page_hatching(const ContentItem& item) {
  const Path& path = item.path;
  constexpr std::size_t few = 8;
  if (item.word != "S" || path.size() < few || path.size() % 2 == 1) return std::nullopt;
  for (std::size_t i = 0; i < path.size(); i += 2) {
    if (path[i].op != 'm' || path[i + 1].op != 'l') return std::nullopt;
  }
  const double angle =
      std::atan2(path[1].y() - path[0].y(), path[1].x() - path[0].x()) * 180 / std::numbers::pi;
  PageHatching out;
  out.degrees = (static_cast<int>(std::lround(angle / 45)) * 45 + 180) % 180;
  const TurnedAxes turned(out.degrees);
  const auto across = [&](std::size_t i) { return turned.across(path[i].x(), path[i].y()); };
  const double step =
      (across(path.size() - 2) - across(0)) / (static_cast<double>(path.size()) / 2 - 1);
  out.twentieths = static_cast<int>(std::lround(std::abs(step) / points_a_twentieth));
  if (out.twentieths == 0) return std::nullopt;
  const double exact = out.twentieths * points_a_twentieth;
  for (std::size_t i = 0; i < path.size(); ++i) {
    const double lines = across(i) / exact, whole = std::round(lines);
    if (std::abs(lines - whole) * exact > off_grid_at_most) return std::nullopt;
    const double before = std::round(across(0) / exact);
    if (std::abs(whole - before) != static_cast<double>(i / 2)) return std::nullopt;
  }
  return out;
}
}  // namespace furnish
