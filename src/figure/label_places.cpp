#include "figure/label_places.h"

#include <algorithm>
#include <array>

namespace furnish {
namespace {
/// Which way from its point a label stands: -1, 0 or 1 across and down.
struct Way {
  int across, down;
};
constexpr std::array ways{Way{0, -1}, Way{0, 1},  Way{1, -1}, Way{-1, -1},
                          Way{1, 1},  Way{-1, 1}, Way{1, 0},  Way{-1, 0}};
constexpr int steps = 12;  // how far a label that must be there may go
constexpr double line_cost = 20, dot_cost = 60, step_cost = 3;

class Places {
 public:
  explicit Places(const LabelRoom& room) : room_(room), taken_(room.taken) {}

  std::optional<Rect> serve(const LabelWish& wish) {
    std::optional<Rect> best = near(wish);
    if (!best && wish.must) best = anywhere(wish);
    if (best) {
      const Length air = room_.clear;
      taken_.push_back(outset(*best, {Length{}, air, Length{}, air}));
    }
    return best;
  }

 private:
  std::optional<Rect> near(const LabelWish& wish) const {
    std::optional<Rect> best;
    double least = 0;
    for (int step = 0; step <= (wish.must ? steps : 0); ++step) {
      for (std::size_t i = 0; i < ways.size(); ++i) {
        const Rect place = at(wish, ways[i], room_.clear + room_.dot + room_.clear * (2 * step));
        if (!free(place)) continue;
        const double spoilt = harm(place, wish.at);
        if (spoilt > 0 && !wish.must) continue;
        const double cost = spoilt + step * step_cost + static_cast<double>(i) / 10;
        if (best && cost >= least) continue;
        best = place;
        least = cost;
      }
    }
    return best;
  }

  /// The nearest free spot of a grid over the whole area.
  std::optional<Rect> anywhere(const LabelWish& wish) const {
    std::optional<Rect> best;
    std::int64_t least = 0;
    constexpr int grid = 40;
    const Length wide = room_.area.size.width - wish.size.width,
                 high = room_.area.size.height - wish.size.height;
    for (int row = 0; row <= grid; ++row) {
      for (int column = 0; column <= grid; ++column) {
        const Rect place{
            {room_.area.left() + wide * column / grid, room_.area.top() + high * row / grid},
            wish.size};
        if (!free(place)) continue;
        const std::int64_t far = std::abs((place.left() + wish.size.width / 2 - wish.at.x).um()) +
                                 std::abs((place.top() + wish.size.height / 2 - wish.at.y).um());
        if (best && far >= least) continue;
        best = place;
        least = far;
      }
    }
    return best;
  }

  static Rect at(const LabelWish& wish, Way way, Length off) {
    const auto begin = [off](Length middle, Length size, int towards) {
      if (towards < 0) return middle - off - size;
      return towards > 0 ? middle + off : middle - size / 2;
    };
    // At a corner it may be nearer: the dot is round.
    return {{begin(wish.at.x, wish.size.width, way.across),
             begin(wish.at.y, wish.size.height, way.down)},
            wish.size};
  }

  bool free(const Rect& place) const {
    return contains(room_.area, place) &&
           std::ranges::none_of(taken_, [&](const Rect& other) { return overlap(place, other); });
  }

  double harm(const Rect& place, Point own) const {
    double sum = 0;
    for (const auto& [from, to] : room_.lines) sum += crosses(place, from, to) ? line_cost : 0;
    for (const Point& dot : room_.dots) {
      const Length r = room_.dot;
      if (dot != own && overlap(place, {{dot.x - r, dot.y - r}, {r * 2, r * 2}})) sum += dot_cost;
    }
    return sum;
  }

  const LabelRoom& room_;
  std::vector<Rect> taken_;
};
}  // namespace

bool crosses(const Rect& r, Point from, Point to) {
  // Cut down to what lies between the edges, one axis after the other.
  double begin = 0, end = 1;
  const auto cut = [&](Length at, Length step, Length low, Length high) {
    if (step == Length{}) return at > low && at < high;
    double enter = (low - at) / step, leave = (high - at) / step;
    if (enter > leave) std::swap(enter, leave);
    begin = std::max(begin, enter);
    end = std::min(end, leave);
    return begin < end;
  };
  return cut(from.x, to.x - from.x, r.left(), r.right()) &&
         cut(from.y, to.y - from.y, r.top(), r.bottom());
}

std::vector<std::optional<Rect>> place_labels(const std::vector<LabelWish>& wishes,
                                              const LabelRoom& room) {
  Places places(room);
  std::vector<std::optional<Rect>> out;
  for (const LabelWish& wish : wishes) out.push_back(places.serve(wish));
  return out;
}
}  // namespace furnish
