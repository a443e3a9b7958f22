#include "figure/edge.h"

#include <algorithm>
#include <limits>

#include "figure/strands.h"

namespace furnish {
namespace {
// All by eye. Lengths are in units of the figure; angles between two stretches of a line are given
// by their cosine, so that 1 is straight on.

/// Between points at which the edge is looked at, and how many a ring has at least.
constexpr double step = 0.9;
constexpr std::size_t fewest_steps = 8;
/// Farther than this from any hair's tip nothing grows.
constexpr double tip_reach = 7;

/// Times that facets are rounded off, and what turns too sharply to be one.
constexpr int rounding_passes = 3;
constexpr double facet_turn = 0.72;
/// A plain edge keeps a corner that turns more than this, and leaves out points this near its line.
constexpr double corner_turn = 0.45, plain_tolerance = 0.11;

/// What varies from tuft to tuft: share of the usual depth and width, from the least, by so much.
constexpr double least_depth = 0.5, depth_varies = 0.8;
constexpr double least_width = 0.55, width_varies = 0.95;
constexpr std::uint32_t depth_seed = 29, width_seed = 17;
constexpr std::size_t narrowest_tuft = 2;  ///< in steps

/// Control points of a scallop, out by so many of its depth and in by this share of its chord.
constexpr double scallop_bulge = 1.9, scallop_inset = 0.08;

/// How soon a hair's lean along the edge moves its tuft's tip to the end.
constexpr double lean = 1.4;
/// The outer curve of a tuft: how near it comes to the edge's own line, and how far its control
/// points go to there.
constexpr double bow_to_edge = 0.8, bow_control = 0.66;
/// The inner curve: by which share of its chord it is hollow, and drawn back along the edge; how
/// much of that counts at the end next to the skin.
constexpr double hollow_depth = 0.35, hollow_back = 0.12, hollow_at_skin = 0.6;

/// How tufts of one kind of coat grow with its length.
struct TuftGrowth {
  EdgeForm form = EdgeForm::plain;
  double shortest = 0;                           ///< coat under this has a plain edge
  double width = 0, width_each = 0, widest = 0;  ///< width, and what each unit of length adds
  double depth_each = 0, deepest = 0;
};

TuftGrowth tuft_growth(Coat coat) {
  switch (coat) {
    case Coat::double_coat:
      return {EdgeForm::pointed, 2.5, 4, 0.14, 7.0, 0.18, 2.6};
    case Coat::silky:
      return {EdgeForm::pointed, 3, 4, 0.12, 7.0, 0.14, 2.4};
    case Coat::drop:
      return {EdgeForm::pointed, 4, 4, 0.04, 6.0, 0.08, 1.9};
    case Coat::wire:
      return {EdgeForm::pointed, 1.6, 3.8, 0.14, 5.6, 0.26, 1.9};
    case Coat::curly:
      return {EdgeForm::scalloped, 1.2, 2.8, 0.08, 5.2, 0.3, 1.1};
    case Coat::smooth:
    case Coat::hairless:
      break;
  }
  return {};
}

/// What one tuft is like.
struct Tuft {
  EdgeForm form = EdgeForm::plain;
  double width = 0, depth = 0;
};

Tuft tuft_of(Coat coat, double length) {
  const TuftGrowth g = tuft_growth(coat);
  if (g.form == EdgeForm::plain || length < g.shortest) return {};
  return {g.form, std::min(g.width + g.width_each * length, g.widest),
          std::min(g.depth_each * length, g.deepest)};
}

/// A ring with equal steps, and what grows at each of them.
struct Walk {
  Ring points;
  std::vector<const HairTip*> tips;
  std::size_t size() const { return points.size(); }
  Vec at(std::size_t i) const { return points[i % size()]; }
  Vec along(std::size_t i) const { return unit(at(i + 1) - at(i + size() - 1)); }
};

/// Rounds off the facets that the outline's sampling left, but no real corner.
void smooth(Ring& points) {
  for (int pass = 0; pass < rounding_passes; ++pass) {
    const Ring before = points;
    const std::size_t n = before.size();
    for (std::size_t i = 0; i < n; ++i) {
      const Vec a = before[(i + n - 2) % n], b = before[i], c = before[(i + 2) % n];
      if (dot(unit(b - a), unit(c - b)) < facet_turn) continue;
      const Vec near = (before[(i + n - 1) % n] + before[(i + 1) % n]) * 0.5;
      points[i] = mix(b, near, 0.5);
    }
  }
}

Walk walk(const Ring& ring, const std::vector<HairTip>& tips) {
  double around = 0;
  for (std::size_t i = 0; i < ring.size(); ++i)
    around += distance(ring[i], ring[(i + 1) % ring.size()]);
  const auto count = std::max(fewest_steps, static_cast<std::size_t>(around / step));
  Walk out;
  double next = 0, gone = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Vec a = ring[i], b = ring[(i + 1) % ring.size()];
    const double edge = distance(a, b);
    while (next < gone + edge && out.points.size() < count) {
      out.points.push_back(mix(a, b, (next - gone) / edge));
      next += around / static_cast<double>(count);
    }
    gone += edge;
  }
  smooth(out.points);
  for (const Vec& p : out.points) {
    const HairTip* nearest = nullptr;
    double best = tip_reach * tip_reach;  // distances are compared by their squares
    for (const HairTip& tip : tips) {
      const Vec d = tip.at - p;
      const double off = dot(d, d);
      if (off < best) {
        best = off;
        nearest = &tip;
      }
    }
    out.tips.push_back(nearest);
  }
  return out;
}

class Edge {
 public:
  Edge(const Walk& points, Coat coat, double coarse)
      : walk_(points), coat_(coat), coarse_(coarse) {}

  std::vector<Bezier> drawn() {
    const std::size_t n = walk_.size();
    pen_ = inset_at(0);
    const Vec begin = pen_;
    std::size_t i = 0;
    while (i < n) i = tuft_at(i).form == EdgeForm::plain ? plain_from(i) : tuft_from(i);
    if (distance(pen_, begin) > 1e-9 && !out_.empty()) out_.back().to = begin;
    return std::move(out_);
  }

 private:
  Tuft tuft_at(std::size_t i) const {
    const HairTip* tip = walk_.tips[i % walk_.size()];
    return tip == nullptr ? Tuft{} : tuft_of(coat_, tip->length);
  }
  Vec inset_at(std::size_t i) const {
    const double vary =
        least_depth + depth_varies * scatter(depth_seed, static_cast<std::uint32_t>(i));
    return walk_.at(i) - left_of(walk_.along(i)) * (tuft_at(i).depth * vary);
  }

  std::size_t plain_from(std::size_t i) {
    Ring line{pen_};
    const std::size_t n = walk_.size();
    for (++i; i < n && tuft_at(i).form == EdgeForm::plain; ++i) line.push_back(walk_.at(i));
    line.push_back(i >= n ? inset_at(0) : walk_.at(i));
    const Ring kept = simplified_line(line, plain_tolerance);
    std::vector<Knot> knots;
    for (std::size_t k = 0; k < kept.size(); ++k) {
      const bool inner = k > 0 && k + 1 < kept.size();
      const bool sharp =
          inner && dot(unit(kept[k] - kept[k - 1]), unit(kept[k + 1] - kept[k])) < corner_turn;
      knots.push_back({kept[k], sharp});
    }
    for (const Bezier& curve : spline(knots, SplineEnds::open)) out_.push_back(curve);
    pen_ = line.back();
    return i;
  }

  std::size_t tuft_from(std::size_t i) {
    const std::size_t n = walk_.size();
    const Tuft tuft = tuft_at(i);
    const double vary = least_width + width_varies * scatter(width_seed, drawn_++);
    std::size_t steps =
        std::max(narrowest_tuft, static_cast<std::size_t>(tuft.width * coarse_ * vary / step));
    if (i + steps + 2 >= n) steps = n - i;
    // A change to plain coat ends the tuft there.
    for (std::size_t k = 1; k < steps; ++k) {
      if (tuft_at(i + k).form == EdgeForm::plain) steps = k;
    }
    const std::size_t end = i + steps;
    const Vec to = end >= n ? inset_at(0) : inset_at(end);
    if (tuft.form == EdgeForm::scalloped) {
      const Vec out = left_of(unit(to - pen_)) * (tuft.depth * scallop_bulge);
      const Vec chord = to - pen_;
      out_.push_back(
          {pen_, pen_ + chord * scallop_inset + out, to - chord * scallop_inset + out, to});
    } else {
      pointed(i, steps, to);
    }
    pen_ = to;
    return end;
  }

  /// Out along the hair in one long curve, back under it in a short one.
  void pointed(std::size_t i, std::size_t steps, Vec to) {
    const HairTip* tip = walk_.tips[(i + steps / 2) % walk_.size()];
    const Vec along = walk_.along(i + steps / 2);
    // From -1, back along the edge, to 1, on along it.
    const double flow =
        tip == nullptr ? 0 : std::clamp(lean * dot(tip->direction, along), -1.0, 1.0);
    const auto reach =
        static_cast<std::size_t>(std::lround(static_cast<double>(steps) * (0.5 + 0.5 * flow)));
    const Vec peak = walk_.at(i + std::min(steps, reach));
    const Vec middle_out = walk_.at(i + reach / 2);
    const Vec middle_back = walk_.at(i + reach + (steps - std::min(steps, reach)) / 2);
    const auto bow = [](Vec a, Vec b, Vec through) {
      const Vec control = mix(mix(a, b, 0.5), through, bow_to_edge);
      return Bezier{a, mix(a, control, bow_control), mix(b, control, bow_control), b};
    };
    // The way back runs under the tuft before it turns to the next.
    const auto hollow = [&](Vec a, Vec b, double way) {
      const Vec in = left_of(along) * (-hollow_depth * distance(a, b)) +
                     along * (-hollow_back * way * distance(a, b));
      return Bezier{a, mix(a, b, 0.3) + in * (way > 0 ? 1 : hollow_at_skin),
                    mix(a, b, 0.7) + in * (way > 0 ? hollow_at_skin : 1), b};
    };
    if (flow >= 0) {
      out_.push_back(bow(pen_, peak, middle_out));
      out_.push_back(hollow(peak, to, 1));
    } else {
      out_.push_back(hollow(pen_, peak, -1));
      out_.push_back(bow(peak, to, middle_back));
    }
  }

  const Walk& walk_;
  Coat coat_;
  double coarse_;
  std::vector<Bezier> out_;
  Vec pen_;
  std::uint32_t drawn_ = 0;
};
}  // namespace

std::vector<std::vector<Bezier>> drawn_edge(const Shape& shape, const std::vector<HairTip>& tips,
                                            Coat coat, double coarse) {
  std::vector<std::vector<Bezier>> out;
  for (const Ring& ring : shape) {
    const Walk points = walk(ring, tips);
    out.push_back(Edge(points, coat, coarse).drawn());
  }
  return out;
}

std::vector<std::vector<Bezier>> without_hidden(const std::vector<std::vector<Bezier>>& outline,
                                                const Ring& hidden, double reach) {
  std::vector<std::vector<Bezier>> out;
  for (const auto& line : outline) {
    std::vector<Bezier> seen;
    for (const Bezier& curve : line) {
      const Vec middle = curve.at(0.5);
      const bool lost =
          std::ranges::any_of(hidden, [&](Vec p) { return distance(p, middle) < reach; });
      if (!lost) {
        seen.push_back(curve);
      } else if (!seen.empty()) {
        out.push_back(std::move(seen));
        seen.clear();
      }
    }
    if (!seen.empty()) out.push_back(std::move(seen));
  }
  return out;
}
}  // namespace furnish
