#include "output/repeated_shapes.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <map>
#include <optional>
#include <string>
#include <utility>

#include "output/content_rows.h"
#include "output/page_hatching.h"

namespace furnish {
namespace {
/// Points of paths that are worth an object of their own.
constexpr std::size_t worth_an_object = 60;
/// How far from where it ought to be a point may be: figures are set to a micrometre and cairo
/// knows points in parts of 256, which adds up over a drawing to about 0.015 mm.
constexpr double alike_within = 0.045;
/// Smaller than this it says too little of its scale.
constexpr double smallest_outline = 4;

/// An outline that may be one with another.
struct DrawnOutline {
  std::size_t page = 0, item = 0;
  std::string form;  ///< its operators
  double left = std::numeric_limits<double>::max(), right = -left, top = left, bottom = -left;
  std::size_t points = 0;
  bool taken = false;     ///< part of what is repeated
  std::size_t shape = 0;  ///< of which one, if it is its first
};

class ShapeSearch {
 public:
  explicit ShapeSearch(const std::vector<std::vector<ContentItem>>& pages) : pages_(pages) {
    for (std::size_t page = 0; page < pages.size(); ++page) {
      for (std::size_t item = 0; item < pages[page].size(); ++item) note(page, item);
    }
  }

  std::vector<RepeatedShape> shapes() {
    for (std::size_t i = 0; i < outlines_.size(); ++i) {
      auto& alike = by_form_[outlines_[i].form];
      if (!outlines_[i].taken) place(i, alike);
      alike.push_back(i);
    }
    for (RepeatedShape& shape : shapes_) measure_by_largest(shape);
    return std::move(shapes_);
  }

 private:
  void note(std::size_t page, std::size_t item) {
    const ContentItem& one = pages_[page][item];
    constexpr std::size_t few_steps = 8;
    const bool drawn = one.paints() && (has_curves(one.path) || one.path.size() >= few_steps);
    if (!drawn || !in_rows(one).empty() || page_hatching(one)) return;
    DrawnOutline out;
    out.page = page;
    out.item = item;
    out.form = one.word;
    for (const Step& step : one.path) {
      if (step.op == 'r') return;
      if (step.op == 'm' || step.op == 'h') out.form += step.op;
      for (std::size_t k = 0; k < operands_of(step.op); k += 2) {
        out.left = std::min(out.left, step.at[k]);
        out.right = std::max(out.right, step.at[k]);
        out.top = std::min(out.top, step.at[k + 1]);
        out.bottom = std::max(out.bottom, step.at[k + 1]);
        ++out.points;
      }
    }
    outlines_.push_back(std::move(out));
  }

  /// What of outlines from `base` on is drawn again from `i` on.
  struct Found {
    std::size_t base = 0, count = 0, points = 0;
    Placing placing;
  };

  void place(std::size_t i, const std::vector<std::size_t>& alike) {
    Found best;
    for (const std::size_t base : alike) {
      for (const bool mirrored : {false, true}) {
        const auto placing = placing_of(outlines_[base], outlines_[i], mirrored);
        if (!placing) continue;
        const Found found = reach(base, i, *placing);
        if (found.points > best.points) best = found;
      }
    }
    if (best.points < worth_an_object) return;
    DrawnOutline& base = outlines_[best.base];
    if (!base.taken) {
      base.shape = shapes_.size();
      shapes_.push_back({{instance(best.base, best.count, {})}, 0});
    }
    shapes_[base.shape].instances.push_back(instance(i, best.count, best.placing));
  }

  Instance instance(std::size_t first, std::size_t count, const Placing& placing) {
    for (std::size_t k = first; k < first + count; ++k) outlines_[k].taken = true;
    const std::size_t last = outlines_[first + count - 1].item;
    return {outlines_[first].page, outlines_[first].item, last, placing};
  }

  static std::optional<Placing> placing_of(const DrawnOutline& base, const DrawnOutline& to,
                                           bool mirrored) {
    const double wide = base.right - base.left, high = base.bottom - base.top;
    if (std::max(wide, high) < smallest_outline) return std::nullopt;
    Placing out;
    out.mirrored = mirrored;
    const double to_wide = to.right - to.left, to_high = to.bottom - to.top;
    out.scale = wide > high ? to_wide / wide : to_high / high;
    if (std::abs(out.scale - 1) * std::max(wide, high) < 2 * alike_within) out.scale = 1;
    if (std::abs(wide * out.scale - to_wide) > 2 * alike_within ||
        std::abs(high * out.scale - to_high) > 2 * alike_within) {
      return std::nullopt;
    }
    // Middle upon middle.
    out.x =
        (to.left + to.right - (mirrored ? -out.scale : out.scale) * (base.left + base.right)) / 2;
    out.y = (to.top + to.bottom - out.scale * (base.top + base.bottom)) / 2;
    return out;
  }

  /// As far as one placing holds for both, and all between them is the same.
  Found reach(std::size_t base, std::size_t i, const Placing& placing) const {
    Found out{base, 0, 0, placing};
    const bool known = outlines_[base].taken;
    const std::size_t most = known ? count_of(base) : i - base;
    if (most == 0) return out;
    while (out.count < most && i + out.count < outlines_.size()) {
      const DrawnOutline &one = outlines_[base + out.count], &other = outlines_[i + out.count];
      if (other.taken || (!known && one.taken)) break;
      if (one.form != other.form || !same_way(base, i, out.count, placing)) break;
      if (!same_shape(one, other, placing)) break;
      out.points += one.points;
      ++out.count;
    }
    if (known && out.count < most) out.points = 0;
    return out;
  }

  /// Outlines of what `base` is the first of; 0 if it is in its middle.
  std::size_t count_of(std::size_t base) const {
    if (shapes_.empty()) return 0;
    const RepeatedShape& shape = shapes_[outlines_[base].shape];
    const Instance& first = shape.instances.front();
    if (first.page != outlines_[base].page || first.first != outlines_[base].item) return 0;
    std::size_t end = base;
    while (end < outlines_.size() && outlines_[end].page == first.page &&
           outlines_[end].item <= first.last) {
      ++end;
    }
    return end - base;
  }

  const ContentItem& item(const DrawnOutline& one) const { return pages_[one.page][one.item]; }

  /// Whether the state changes alike before both of so many past the first, and may be part of a
  /// shape.
  bool same_way(std::size_t base, std::size_t i, std::size_t count, const Placing& placing) const {
    const DrawnOutline &one = outlines_[base + count], &other = outlines_[i + count];
    const bool same_size = placing.scale == 1;
    if (!same_size && (item(one).dashed || item(other).dashed)) return false;
    if (count == 0) return true;
    const DrawnOutline &before = outlines_[base + count - 1],
                       &other_before = outlines_[i + count - 1];
    const std::size_t between = one.item - before.item;
    if (one.page != before.page || other.page != other_before.page ||
        between != other.item - other_before.item) {
      return false;
    }
    for (std::size_t k = 1; k < between; ++k) {
      const ContentItem &a = pages_[one.page][before.item + k],
                        &b = pages_[other.page][other_before.item + k];
      const bool of_line = a.word == "w" || a.word == "d";
      if (!a.changes() || a.all != b.all || (of_line && !same_size)) return false;
    }
    return true;
  }

  /// Each point of both is on the other's lines, and both begin alike: where cairo rounded lines
  /// so that they run straight on, it made one of two.
  bool same_shape(const DrawnOutline& one, const DrawnOutline& other,
                  const Placing& placing) const {
    const Path path = flattened(item(one).path, placing), to = flattened(item(other).path, {});
    const double most = alike_within * std::max(1., placing.scale);
    const bool begin =
        std::hypot(path.front().x() - to.front().x(), path.front().y() - to.front().y()) <= most;
    return begin && lies_on(path, to, most) && lies_on(to, path, most);
  }

  /// As lines where it is placed, closed by lines too.
  static Path flattened(const Path& path, const Placing& placing) {
    constexpr int looks = 4;
    const double across = placing.mirrored ? -placing.scale : placing.scale;
    Path out;
    Step begin{'m'}, at{'m'};
    const auto go = [&](char op, double x, double y) {
      out.push_back({op, {across * x + placing.x, placing.scale * y + placing.y}});
    };
    for (const Step& step : path) {
      if (step.op == 'h') {
        go('l', begin.x(), begin.y());
      } else if (step.op == 'c') {
        for (int k = 1; k <= looks; ++k) {
          const double t = static_cast<double>(k) / looks, u = 1 - t;
          const auto on_curve = [&](std::size_t i, double from) {
            return u * u * u * from + 3 * u * u * t * step.at[i] + 3 * u * t * t * step.at[i + 2] +
                   t * t * t * step.at[i + 4];
          };
          go('l', on_curve(0, at.x()), on_curve(1, at.y()));
        }
      } else {
        go(step.op, step.x(), step.y());
      }
      if (step.op == 'm') begin = step;
      at = step.op == 'h' ? begin : step;
    }
    return out;
  }

  /// The points of lines lie on those of others, in their order.
  static bool lies_on(const Path& path, const Path& other, double most) {
    std::size_t at = 0;
    for (const Step& step : path) {
      while (at < other.size() && !is_on(step, other, at, most)) ++at;
      if (at == other.size()) return false;
    }
    return true;
  }
  static bool is_on(const Step& step, const Path& other, std::size_t at, double most) {
    const Step& to = other[at];
    const Step& from = to.op == 'l' && at > 0 ? other[at - 1] : to;
    const double along_x = to.x() - from.x(), along_y = to.y() - from.y();
    const double x = step.x() - from.x(), y = step.y() - from.y();
    const double length = along_x * along_x + along_y * along_y;
    const double t = length > 0 ? std::clamp((x * along_x + y * along_y) / length, 0., 1.) : 0;
    return std::hypot(x - t * along_x, y - t * along_y) <= most;
  }

  /// Placings become those of the largest, so that what is rounded is never made larger.
  static void measure_by_largest(RepeatedShape& shape) {
    const auto found = std::ranges::max_element(
        shape.instances, {}, [](const Instance& one) { return one.placing.scale; });
    shape.largest = static_cast<std::size_t>(found - shape.instances.begin());
    const Placing by = found->placing;
    for (Instance& one : shape.instances) {
      Placing& placing = one.placing;
      placing.scale /= by.scale;
      placing.mirrored = placing.mirrored != by.mirrored;
      placing.x -= (placing.mirrored ? -placing.scale : placing.scale) * by.x;
      placing.y -= placing.scale * by.y;
    }
  }

  const std::vector<std::vector<ContentItem>>& pages_;
  std::vector<DrawnOutline> outlines_;
  std::map<std::string, std::vector<std::size_t>, std::less<>> by_form_;
  std::vector<RepeatedShape> shapes_;
};
}  // namespace

std::vector<RepeatedShape> repeated_shapes(const std::vector<std::vector<ContentItem>>& pages) {
  return ShapeSearch(pages).shapes();
}
}  // namespace furnish
