#include "output/compact_content.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdlib>
#include <optional>
#include <vector>

#include "output/content_operators.h"

namespace furnish {
namespace {
constexpr double tenths = 10, hundredths = 100;

constexpr bool space(char c) {
  return c == ' ' || c == '\n' || c == '\r' || c == '\t';
}

/// The numbers before an operator; empty if something else stands there.
std::optional<std::vector<double>> numbers(std::string_view operands) {
  std::vector<double> out;
  while (true) {
    while (!operands.empty() && space(operands.front())) operands.remove_prefix(1);
    if (operands.empty()) return out;
    const char* const end = operands.data() + operands.size();
    const auto [after, fault] = std::from_chars(operands.data(), end, out.emplace_back());
    if (fault != std::errc() || (after != end && !space(*after))) return std::nullopt;
    operands.remove_prefix(static_cast<std::size_t>(after - operands.data()));
  }
}

/// As short as it can be in parts of one.
void append(std::string& out, double number, double parts) {
  const long all = std::lround(number * parts);
  const auto unit = static_cast<long>(parts);
  const long whole = std::labs(all) / unit, part = std::labs(all) % unit;
  if (all < 0) out += '-';
  if (whole > 0 || part == 0) out += std::to_string(whole);
  if (part == 0) return;
  std::string digits = std::to_string(unit + part);
  digits.front() = '.';
  while (digits.back() == '0') digits.pop_back();
  out += digits;
}

/// An operator that makes a path, and where.
struct Step {
  std::string_view word;
  std::vector<double> points;
};
using Path = std::vector<Step>;

bool is_step(std::string_view word) {
  return word == "m" || word == "l" || word == "c" || word == "h" || word == "re";
}

void append(std::string& out, const Step& step, double parts) {
  for (const double number : step.points) {
    append(out, number, parts);
    out += ' ';
  }
  out += step.word;
  out += '\n';
}

bool same(double a, double b) {
  return std::lround(a * hundredths) == std::lround(b * hundredths);
}

/// "x y w h re" of "m l l l h" along the axes.
std::optional<Step> rectangle(const Step* five) {
  constexpr std::array<std::string_view, 5> words{"m", "l", "l", "l", "h"};
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (five[i].word != words[i]) return std::nullopt;
  }
  const auto x = [&](std::size_t i) { return five[i].points[0]; };
  const auto y = [&](std::size_t i) { return five[i].points[1]; };
  const bool along = same(y(0), y(1)) && same(x(1), x(2)) && same(y(2), y(3)) && same(x(3), x(0));
  if (!along) return std::nullopt;
  return Step{"re", {x(0), y(0), x(1) - x(0), y(2) - y(1)}};
}

/// Dots, which are lines without length, in rows of one distance.
class Dots {
 public:
  /// Whether a path is nothing else, and enough of them.
  static bool are(const Path& path) {
    constexpr std::size_t few = 16;
    if (path.size() < few || path.size() % 2 == 1) return false;
    for (std::size_t i = 0; i < path.size(); i += 2) {
      if (path[i].word != "m" || path[i + 1].word != "h") return false;
    }
    return true;
  }
  explicit Dots(const Path& path) {
    for (std::size_t i = 0; i < path.size(); i += 2) {
      points_.push_back({path[i].points[0], path[i].points[1]});
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
      append(out, {"m", {points_[from].x, points_[from].y}}, hundredths);
      append(out, {"l", {end.x, end.y}}, hundredths);
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
  std::vector<std::vector<double>> boxes;
  for (const Step& one : path) {
    if (one.word == "re") {
      boxes.push_back(one.points);
    } else if (&one != &path.back() || one.word != "m") {  // where cairo left its pen
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

/// Leaves out points of lines that run as good as straight on.
class Straightened {
 public:
  explicit Straightened(const Path& path) : path_(path), keep_(path.size(), true) {
    for (std::size_t from = 0; from < path.size();) {
      std::size_t to = from;
      while (to + 1 < path.size() && path[to + 1].word == "l") ++to;
      const bool begins = path[from].word == "m" || path[from].word == "l";
      if (begins && to > from + 1) straighten(from, to);
      from = to + 1;
    }
  }
  Path path() const {
    Path out;
    for (std::size_t i = 0; i < path_.size(); ++i) {
      if (keep_[i]) out.push_back(path_[i]);
    }
    return out;
  }

 private:
  /// Douglas and Peucker's way, published in 1973.
  void straighten(std::size_t from, std::size_t to) {
    constexpr double near = 0.05;  // points, half of what a curve's are rounded to
    std::vector<std::pair<std::size_t, std::size_t>> left{{from, to}};
    while (!left.empty()) {
      const auto [a, b] = left.back();
      left.pop_back();
      std::size_t farthest = a;
      double most = near;
      for (std::size_t i = a + 1; i < b; ++i) {
        if (const double off = distance(i, a, b); off > most) {
          most = off;
          farthest = i;
        }
      }
      for (std::size_t i = a + 1; farthest == a && i < b; ++i) keep_[i] = false;
      if (farthest == a) continue;
      left.emplace_back(a, farthest);
      left.emplace_back(farthest, b);
    }
  }
  /// Of a point from the stretch between two others.
  double distance(std::size_t i, std::size_t a, std::size_t b) const {
    const double x = path_[i].points[0] - path_[a].points[0],
                 y = path_[i].points[1] - path_[a].points[1],
                 across = path_[b].points[0] - path_[a].points[0],
                 down = path_[b].points[1] - path_[a].points[1];
    const double length = across * across + down * down;
    const double along = length > 0 ? std::clamp((x * across + y * down) / length, 0., 1.) : 0;
    return std::hypot(x - along * across, y - along * down);
  }

  const Path& path_;
  std::vector<bool> keep_;
};

/// With rectangles as such.
Path boxed(const Path& path) {
  Path out;
  for (std::size_t i = 0; i < path.size(); ++i) {
    auto box = i + 5 <= path.size() ? rectangle(&path[i]) : std::nullopt;
    if (box) i += 4;
    out.push_back(box ? *std::move(box) : path[i]);
  }
  return out;
}

void append(std::string& out, const Path& path) {
  const bool curved = std::ranges::any_of(path, [](const Step& one) { return one.word == "c"; });
  for (const Step& step : path) append(out, step, curved ? tenths : hundredths);
}
}  // namespace

std::string compact_content(std::string_view content) {
  std::string out;
  Path path;
  std::size_t last = 0;
  ContentOperators operators(content);
  for (auto word = operators.next(); !word.empty(); word = operators.next()) {
    const std::size_t end = operators.position();
    const std::string_view all = content.substr(last, end - last);
    const std::string_view own = content.substr(end - word.size(), word.size());
    last = end;
    if (is_step(own)) {
      if (auto points = numbers(all.substr(0, all.size() - own.size()))) {
        path.push_back({own, *std::move(points)});
        continue;
      }
    }
    path = boxed(Straightened(path).path());
    const bool dots = own == "S" && Dots::are(path);
    const std::string mask = own == "f" || own == "f*" ? mask_of(path) : std::string();
    if (dots) {
      Dots(path).append_to(out);
    } else {
      out += mask;
      if (mask.empty()) append(out, path);
    }
    path.clear();
    if (dots || !mask.empty()) continue;
    const std::size_t begin = all.find_first_not_of(" \n\r\t");
    out += all.substr(begin == all.npos ? 0 : begin);
    out += '\n';
  }
  append(out, path);
  const std::size_t rest = content.find_first_not_of(" \n\r\t", last);
  if (rest != content.npos) out += content.substr(rest);
  return out;
}
}  // namespace furnish
