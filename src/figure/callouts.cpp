#include "figure/callouts.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace furnish {
namespace {
constexpr double between = 0.8;  // mm of white from disc to disc
constexpr double too_long = 1e6;

/// Places for discs: rings round the figure, the nearest first, none touching another.
std::vector<Vec> ports_of(const CalloutRoom& room) {
  const double pitch = 2 * room.radius + between;
  std::vector<Vec> out;
  for (int ring = 0; ring < 6; ++ring) {
    const Shape around = grown(room.figure, room.radius + room.clear + 0.05 + ring * pitch);
    for (const Ring& line : around) {
      for (std::size_t i = 0; i < line.size(); ++i) {
        const Vec a = line[i], b = line[(i + 1) % line.size()];
        const int pieces = std::max(1, static_cast<int>(distance(a, b) / 0.5));
        for (int k = 0; k < pieces; ++k) {
          const Vec p = mix(a, b, static_cast<double>(k) / pieces);
          if (p.x < room.low.x + room.radius || p.x > room.high.x - room.radius ||
              p.y < room.low.y + room.radius || p.y > room.high.y - room.radius) {
            continue;
          }
          const bool free =
              std::ranges::all_of(out, [&](Vec other) { return distance(other, p) >= pitch; });
          if (free) out.push_back(p);
        }
      }
    }
  }
  return out;
}

/// Kuhn and Munkres: a column for every row, the sum of costs as low as can be. pre: rows <=
/// columns.
std::vector<std::size_t> assigned(const std::vector<std::vector<double>>& cost) {
  const std::size_t n = cost.size(), m = cost.front().size();
  std::vector<double> u(n + 1), v(m + 1);
  std::vector<std::size_t> row_of(m + 1), way(m + 1);
  for (std::size_t i = 1; i <= n; ++i) {
    row_of[0] = i;
    std::size_t column = 0;
    std::vector<double> least(m + 1, std::numeric_limits<double>::max());
    std::vector<bool> used(m + 1, false);
    do {
      used[column] = true;
      const std::size_t row = row_of[column];
      double delta = std::numeric_limits<double>::max();
      std::size_t next = 0;
      for (std::size_t j = 1; j <= m; ++j) {
        if (used[j]) continue;
        const double reduced = cost[row - 1][j - 1] - u[row] - v[j];
        if (reduced < least[j]) {
          least[j] = reduced;
          way[j] = column;
        }
        if (least[j] < delta) {
          delta = least[j];
          next = j;
        }
      }
      for (std::size_t j = 0; j <= m; ++j) {
        if (used[j]) {
          u[row_of[j]] += delta;
          v[j] -= delta;
        } else {
          least[j] -= delta;
        }
      }
      column = next;
    } while (row_of[column] != 0);
    do {
      row_of[column] = row_of[way[column]];
      column = way[column];
    } while (column != 0);
  }
  std::vector<std::size_t> out(n);
  for (std::size_t j = 1; j <= m; ++j) {
    if (row_of[j] != 0) out[row_of[j] - 1] = j - 1;
  }
  return out;
}

struct Leader {
  std::size_t port;
  Vec from, to;
};

/// The port that stands in another's way, if there is one.
std::optional<std::size_t> in_the_way(const std::vector<Leader>& leaders, double radius) {
  for (const Leader& a : leaders) {
    for (const Leader& b : leaders) {
      if (&a == &b) continue;
      if (distance_to_segment(b.from, a.from, a.to) < radius + 0.3) return b.port;
      // Equal sums leave room for a crossing or a touch; another port settles it.
      if (segments_cross(a.from, a.to, b.from, b.to)) return std::max(a.port, b.port);
    }
  }
  return std::nullopt;
}
}  // namespace

bool segments_cross(Vec a, Vec b, Vec c, Vec d) {
  const auto side = [](Vec p, Vec q, Vec r) {
    const double turn = cross(q - p, r - p);
    return turn > 1e-9 ? 1 : turn < -1e-9 ? -1 : 0;
  };
  const auto between_ends = [](Vec p, Vec q, Vec r) {
    return std::min(p.x, q.x) <= r.x && r.x <= std::max(p.x, q.x) && std::min(p.y, q.y) <= r.y &&
           r.y <= std::max(p.y, q.y);
  };
  const int s1 = side(a, b, c), s2 = side(a, b, d), s3 = side(c, d, a), s4 = side(c, d, b);
  if (s1 != s2 && s3 != s4) return true;
  return (s1 == 0 && between_ends(a, b, c)) || (s2 == 0 && between_ends(a, b, d)) ||
         (s3 == 0 && between_ends(c, d, a)) || (s4 == 0 && between_ends(c, d, b));
}

std::vector<PlacedCallout> place_callouts(const CalloutRoom& room,
                                          const std::vector<std::vector<Vec>>& anchors) {
  std::vector<PlacedCallout> out(anchors.size());
  std::vector<Vec> ports = ports_of(room);
  if (anchors.empty()) return out;

  // Each row points to the one of its places that is nearest to free paper.
  std::vector<Vec> to;
  for (const auto& choice : anchors) {
    Vec best = choice.empty() ? Vec{} : choice.front();
    double nearest = too_long;
    for (std::size_t k = 0; k < choice.size(); ++k) {
      for (const Vec& port : ports) {
        const double off = distance(choice[k], port) + 5 * static_cast<double>(k);
        if (off < nearest) {
          nearest = off;
          best = choice[k];
        }
      }
    }
    to.push_back(best);
  }

  while (ports.size() >= anchors.size()) {
    std::vector<std::vector<double>> cost;
    for (const Vec& anchor : to) {
      std::vector<double>& row = cost.emplace_back();
      for (const Vec& port : ports) row.push_back(distance(anchor, port));
    }
    const std::vector<std::size_t> port_of = assigned(cost);
    std::vector<Leader> leaders;
    for (std::size_t i = 0; i < to.size(); ++i) {
      leaders.push_back({port_of[i], ports[port_of[i]], to[i]});
    }
    const auto bad = in_the_way(leaders, room.radius);
    if (bad) {
      ports.erase(ports.begin() + static_cast<std::ptrdiff_t>(*bad));
      continue;
    }
    for (std::size_t i = 0; i < to.size(); ++i) {
      const Vec disc = leaders[i].from, way = unit(to[i] - disc);
      out[i] = {disc, disc + way * room.radius, to[i], true};
    }
    return out;
  }
  return out;
}
}  // namespace furnish
