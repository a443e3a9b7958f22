#include "output/content_rows.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

namespace furnish {
namespace {
bool same(double a, double b) {
  return std::lround(a * hundredths) == std::lround(b * hundredths);
}

/// "x y w h re" of "m l l l h" along the axes.
std::optional<Step> rectangle(const Step* five) {
  constexpr std::string_view ops = "mlllh";
  for (std::size_t i = 0; i < ops.size(); ++i) {
    if (five[i].op != ops[i]) return std::nullopt;
  }
  const auto x = [&](std::size_t i) { return five[i].at[0]; };
  const auto y = [&](std::size_t i) { return five[i].at[1]; };
  const bool along = same(y(0), y(1)) && same(x(1), x(2)) && same(y(2), y(3)) && same(x(3), x(0));
  if (!along) return std::nullopt;
  return Step{'r', {x(0), y(0), x(1) - x(0), y(2) - y(1)}};
}

/// Leaves out points of lines that run as good as straight on.
class Straightened {
 public:
  explicit Straightened(const Path& path) : path_(path), keep_(path.size(), true) {
    for (std::size_t from = 0; from < path.size();) {
      std::size_t to = from;
      while (to + 1 < path.size() && path[to + 1].op == 'l') ++to;
      const bool begins = path[from].op == 'm' || path[from].op == 'l';
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
    std::vector<std::pair<std::size_t, std::size_t>> to_go{{from, to}};
    while (!to_go.empty()) {
      const auto [a, b] = to_go.back();
      to_go.pop_back();
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
      to_go.emplace_back(a, farthest);
      to_go.emplace_back(farthest, b);
    }
  }
  /// Of a point from the stretch between two others.
  double distance(std::size_t i, std::size_t a, std::size_t b) const {
    const double x = path_[i].at[0] - path_[a].at[0], y = path_[i].at[1] - path_[a].at[1],
                 across = path_[b].at[0] - path_[a].at[0], down = path_[b].at[1] - path_[a].at[1];
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

}  // namespace

Path plainer(const Path& path) {
  return boxed(Straightened(path).path());
}
}  // namespace furnish
