#include "output/content_rows.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

namespace furnish {
namespace {
/// Dots, which are lines without length, in rows of one distance.
class Dots {
 public:
  /// Whether a path is nothing else, and enough of them.
  static bool are(const Path& path) {
    constexpr std::size_t few = 16;
    if (path.size() < few || path.size() % 2 == 1) return false;
    for (std::size_t i = 0; i < path.size(); i += 2) {
      if (path[i].op != 'm' || path[i + 1].op != 'h') return false;
    }
    return true;
  }
  explicit Dots(const Path& path) {
    for (std::size_t i = 0; i < path.size(); i += 2) {
      points_.push_back({path[i].at[0], path[i].at[1]});
    }
    step_ = distance(points_[0], points_[1]);
    for (std::size_t i = 2; i < points_.size(); ++i) {
      step_ = std::min(step_, distance(points_[i - 1], points_[i]));
    }
  }
  /// Each row as a line that ends half a step past its last dot.
  void append_to(std::string& out) const {
    out += fmt::format("[0 {:.4f}]0 d\n", step_);
    for (std::size_t from = 0; from < points_.size();) {
      std::size_t last = from;
      while (last + 1 < points_.size() && goes_on(from, last)) ++last;
      const Point to = last > from ? points_[last] : points_[from];
      const Point before = last > from ? points_[last - 1] : Point{to.x - step_, to.y};
      const Point end{to.x + (to.x - before.x) / 2, to.y + (to.y - before.y) / 2};
      append(out, Path{{'m', {points_[from].x, points_[from].y}}, {'l', {end.x, end.y}}});
      from = last + 1;
    }
    out += "S\n[]0 d\n";
  }

 private:
  struct Point {
    double x, y;
  };
  static double distance(Point a, Point b) { return std::hypot(a.x - b.x, a.y - b.y); }
  /// Whether the dot after `last` is in the row that began at `from`.
  bool goes_on(std::size_t from, std::size_t last) const {
    constexpr double near = 0.05;  // points
    const Point next = points_[last + 1];
    if (std::abs(distance(points_[last], next) - step_) > near) return false;
    if (last == from) return true;
    const Point ahead{2 * points_[last].x - points_[last - 1].x,
                      2 * points_[last].y - points_[last - 1].y};
    return distance(ahead, next) < near;
  }

  std::vector<Point> points_;
  double step_ = 0;
};

/// Squares of one size in rows and columns, as of a code that a phone reads, drawn as a mask: one
/// bit each. Empty if the path is anything else, or more than an inline image may hold (4 KiB: ISO
/// 32000-1, 8.9.7).
std::string mask_of(const Path& path) {
  constexpr std::size_t few = 100, most_digits = 4000;
  constexpr double near = 0.05;  // of a square
  std::vector<std::array<double, 6>> boxes;
  for (const Step& one : path) {
    if (one.op == 'r') {
      boxes.push_back(one.at);
    } else if (&one != &path.back() || one.op != 'm') {  // where cairo left its pen
      return {};
    }
  }
  if (boxes.size() < few) return {};
  double unit = boxes.front()[3];
  double left = boxes.front()[0], top = boxes.front()[1], right = left, bottom = top;
  for (const auto& box : boxes) {
    left = std::min(left, box[0]);
    top = std::min(top, box[1]);
    right = std::max(right, box[0] + box[2]);
    bottom = std::max(bottom, box[1] + box[3]);
  }
  // What is drawn is rounded to a micrometre, which adds up over a hundred squares.
  unit = unit > 0 ? (bottom - top) / std::round((bottom - top) / unit) : 0;
  bool even = unit > 0;
  const auto whole = [&](double length) {
    const double squares = length / unit;
    even = even && std::abs(squares - std::round(squares)) < near;
    return even ? static_cast<std::size_t>(std::lround(squares)) : 0;
  };
  const std::size_t columns = whole(right - left), rows = whole(bottom - top);
  const std::size_t digits = (columns + 7) / 8 * 2;
  if (!even || rows * digits > most_digits) return {};
  std::vector<bool> dark(rows * digits * 4);
  for (const auto& box : boxes) {
    const std::size_t x = whole(box[0] - left), y = whole(box[1] - top), wide = whole(box[2]);
    if (!even || whole(box[3]) != 1) return {};
    for (std::size_t i = 0; i < wide; ++i) {
      auto bit = dark[y * digits * 4 + x + i];
      if (bit) return {};  // twice, and so perhaps light
      bit = true;
    }
  }
  std::string out =
      fmt::format("q\n{:.3f} 0 0 {:.3f} {:.3f} {:.3f} cm\nBI/W {}/H {}/IM true/F/AHx ID ",
                  right - left, top - bottom, left, bottom, columns, rows);
  for (std::size_t i = 0; i < dark.size(); i += 4) {
    int digit = 0;  // what is dark is 0
    for (std::size_t j = 0; j < 4; ++j) digit = 2 * digit + (dark[i + j] ? 0 : 1);
    out += "0123456789ABCDEF"[digit];
  }
  return out + ">\nEI\nQ\n";
}

}  // namespace

std::string in_rows(const ContentItem& item) {
  if (item.word == "S" && Dots::are(item.path)) {
    std::string out;
    Dots(item.path).append_to(out);
    return out;
  }
  if (item.word == "f" || item.word == "f*") return mask_of(plainer(item.path));
  return {};
}
}  // namespace furnish
