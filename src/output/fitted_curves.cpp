#include "output/fitted_curves.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace furnish {
namespace {
constexpr double fit_within = 0.057;
/// Stretches that one curve may take the place of.
constexpr std::size_t longest_run = 5;
/// Points at which each is looked at.
constexpr int looks_a_curve = 5;
/// Lines that follow on each other and are looked at like curves.
constexpr std::size_t many_lines = 12;
/// What an operator costs, in operands.
constexpr double of_operator = 0.6;

struct Spot {
  double x = 0, y = 0;
};
Spot operator+(Spot a, Spot b) {
  return {a.x + b.x, a.y + b.y};
}
Spot operator-(Spot a, Spot b) {
  return {a.x - b.x, a.y - b.y};
}
Spot operator*(Spot a, double s) {
  return {a.x * s, a.y * s};
}
double product(Spot a, Spot b) {
  return a.x * b.x + a.y * b.y;
}
Spot on_grid(Spot a) {
  return {std::round(a.x * tenths) / tenths, std::round(a.y * tenths) / tenths};
}

/// A cubic Bézier curve.
struct CubicCurve {
  Spot from, control1, control2, to;
  Spot at(double t) const {
    const double u = 1 - t;
    return from * (u * u * u) + control1 * (3 * u * u * t) + control2 * (3 * u * t * t) +
           to * (t * t * t);
  }
  /// A step of Newton's way to where it is nearest to a spot.
  double nearer(double t, Spot spot) const {
    const double u = 1 - t;
    const Spot off = at(t) - spot;
    const Spot first = (control1 - from) * (3 * u * u) + (control2 - control1) * (6 * u * t) +
                       (to - control2) * (3 * t * t);
    const Spot second =
        (control2 - control1 * 2 + from) * (6 * u) + (to - control2 * 2 + control1) * (6 * t);
    const double slope = product(first, first) + product(off, second);
    if (std::abs(slope) < 1e-9) return t;
    return std::clamp(t - product(off, first) / slope, 0., 1.);
  }
};

double distance_from_line(Spot spot, Spot a, Spot b) {
  const Spot along = b - a, to = spot - a;
  const double length = product(along, along);
  const double t = length > 0 ? std::clamp(product(to, along) / length, 0., 1.) : 0;
  const Spot off = to - along * t;
  return std::hypot(off.x, off.y);
}

/// Which control points are free.
enum class Free { both, first, second };

/// One curve for spots that follow on each other, by least squares.
class CurveFit {
 public:
  explicit CurveFit(const std::vector<Spot>& spots)
      : spots_(spots), from_(on_grid(spots.front())), to_(on_grid(spots.back())) {
    double length = 0;
    start_.push_back(0);
    for (std::size_t i = 1; i < spots.size(); ++i) {
      const Spot step = spots[i] - spots[i - 1];
      start_.push_back(length += std::hypot(step.x, step.y));
    }
    for (double& t : start_) t = length > 0 ? t / length : 0;
  }

  bool is_line() const {
    return std::ranges::all_of(
        spots_, [&](Spot spot) { return distance_from_line(spot, from_, to_) <= fit_within; });
  }

  std::optional<CubicCurve> curve(Free free) const {
    constexpr int times = 3;
    std::vector<double> t = start_;
    CubicCurve curve{from_, from_, to_, to_};
    for (int i = 0; i < times; ++i) {
      if (!solve(t, free, curve)) return std::nullopt;
      for (std::size_t k = 1; k + 1 < t.size(); ++k) t[k] = curve.nearer(t[k], spots_[k]);
    }
    curve.control1 = on_grid(curve.control1);
    curve.control2 = on_grid(curve.control2);
    for (std::size_t k = 0; k < t.size(); ++k) {
      const Spot off = curve.at(curve.nearer(t[k], spots_[k])) - spots_[k];
      if (std::hypot(off.x, off.y) > fit_within) return std::nullopt;
    }
    return curve;
  }

  Spot from() const { return from_; }
  Spot to() const { return to_; }

 private:
  bool solve(const std::vector<double>& ts, Free free, CubicCurve& curve) const {
    double a = 0, b = 0, c = 0;
    Spot first, second;
    for (std::size_t i = 0; i < ts.size(); ++i) {
      const double t = ts[i], u = 1 - t;
      const double of_first = 3 * u * u * t, of_second = 3 * u * t * t;
      Spot left = spots_[i] - from_ * (u * u * u) - to_ * (t * t * t);
      if (free == Free::second) left = left - from_ * of_first;
      if (free == Free::first) left = left - to_ * of_second;
      a += of_first * of_first;
      b += of_first * of_second;
      c += of_second * of_second;
      first = first + left * of_first;
      second = second + left * of_second;
    }
    constexpr double least = 1e-9;
    const double both = a * c - b * b;
    if (free == Free::both ? both < least : a < least || c < least) return false;
    if (free == Free::first) curve.control1 = first * (1 / a);
    if (free == Free::second) curve.control2 = second * (1 / c);
    if (free != Free::both) return true;
    curve.control1 = (first * c - second * b) * (1 / both);
    curve.control2 = (second * a - first * b) * (1 / both);
    return true;
  }

  const std::vector<Spot>& spots_;
  Spot from_, to_;
  std::vector<double> start_;
};

/// The cheapest step for spots; none if no one step is fit_within enough.
std::optional<Step> step_for(const std::vector<Spot>& spots) {
  const CurveFit fit(spots);
  const Spot to = fit.to();
  if (fit.is_line()) return Step{'l', {to.x, to.y}};
  const auto curve = fit.curve(Free::both);
  if (!curve) return std::nullopt;
  if (const auto one = fit.curve(Free::second)) {
    return Step{'v', {one->control2.x, one->control2.y, to.x, to.y}};
  }
  if (const auto one = fit.curve(Free::first)) {
    return Step{'y', {one->control1.x, one->control1.y, to.x, to.y}};
  }
  return Step{
      'c',
      {curve->control1.x, curve->control1.y, curve->control2.x, curve->control2.y, to.x, to.y}};
}

/// Lines and curves from one "m" on.
class Stretches {
 public:
  Stretches(const Path& path, std::size_t begin, std::size_t end) : path_(path), begin_(begin) {
    for (std::size_t i = begin; i < end; ++i) spots_.push_back(spots_of(i));
  }

  /// The way of least cost over all places at which a step may end.
  void append_to(Path& out) const {
    struct Way {
      double cost = std::numeric_limits<double>::max();
      std::size_t from = 0;
      Step step{'l'};
    };
    std::vector<Way> ways(spots_.size() + 1);
    ways.front().cost = 0;
    for (std::size_t i = 0; i < spots_.size(); ++i) {
      std::vector<Spot> spots{start_of(i)};
      for (std::size_t n = 1; n <= longest_run && i + n <= spots_.size(); ++n) {
        const auto& more = spots_[i + n - 1];
        spots.insert(spots.end(), more.begin(), more.end());
        auto step = step_for(spots);
        if (!step && n == 1) step = path_[begin_ + i];
        if (!step) break;
        const double cost = ways[i].cost + of_operator + static_cast<double>(operands_of(step->op));
        if (cost < ways[i + n].cost) ways[i + n] = {cost, i, *step};
      }
    }
    Path backwards;
    for (std::size_t i = spots_.size(); i > 0; i = ways[i].from) backwards.push_back(ways[i].step);
    out.insert(out.end(), backwards.rbegin(), backwards.rend());
  }

 private:
  Spot start_of(std::size_t i) const {
    const Step& before = path_[begin_ + i - 1];
    return {before.x(), before.y()};
  }
  std::vector<Spot> spots_of(std::size_t i) const {
    const Step& step = path_[i];
    const Spot from{path_[i - 1].x(), path_[i - 1].y()}, to{step.x(), step.y()};
    if (step.op == 'l') return {to};
    const CubicCurve curve{from, {step.at[0], step.at[1]}, {step.at[2], step.at[3]}, to};
    std::vector<Spot> out;
    for (int k = 1; k <= looks_a_curve; ++k)
      out.push_back(curve.at(static_cast<double>(k) / looks_a_curve));
    return out;
  }

  const Path& path_;
  std::size_t begin_;
  std::vector<std::vector<Spot>> spots_;
};
}  // namespace

Path fitted(const Path& path) {
  Path out;
  for (std::size_t i = 0; i < path.size();) {
    std::size_t end = i + 1;
    bool curved = false;
    for (; end < path.size() && (path[end].op == 'l' || path[end].op == 'c'); ++end) {
      curved = curved || path[end].op == 'c';
    }
    out.push_back(path[i]);
    const bool begins = path[i].op == 'm';
    if (begins && (curved || end - i > many_lines)) {
      Stretches(path, i + 1, end).append_to(out);
    } else {
      out.insert(out.end(), path.begin() + static_cast<std::ptrdiff_t>(i + 1),
                 path.begin() + static_cast<std::ptrdiff_t>(end));
    }
    i = end;
  }
  return out;
}
}  // namespace furnish
