#include "figure/figure.h"

#include <algorithm>
#include <cmath>
#include <memory>
#include <utility>

#include "figure/areas.h"
#include "figure/callouts.h"
#include "figure/drawing.h"
#include "figure/lengths.h"
#include "figure/on_paper.h"
#include "figure/set_text.h"
#include "figure/spots.h"

namespace furnish {
namespace {
constexpr double leader_weight = 0.25, dot_radius = 0.5;  // mm

/// Longest coat that is drawn, in units of the figure: what still leaves a head, a neck and legs to
/// be seen. By eye. Coats that hang to the ground do so; their heads are kept clear all the same.
double longest_drawn(Region region, Coat coat) {
  const bool hangs = coat == Coat::drop || coat == Coat::silky;
  if (in_group(region, Group::head)) return hangs ? 22 : region == Region::ears ? 12 : 9;
  if (hangs) return 80;
  if (coat == Coat::double_coat) return in_group(region, Group::furnishings) ? 24 : 15;
  switch (region) {
    case Region::front_legs:
    case Region::rear_legs:
    case Region::hocks:
    case Region::feet:
      return 8;
    case Region::tail:
      return 14;
    default:
      return 11;
  }
}

/// As it is up to half of `most`, then ever less of it: never over `most`, and more coat is never
/// drawn shorter than less.
double softened(double length, double most) {
  const double knee = most / 2;
  if (length <= knee) return length;
  return most - knee * std::exp(-(length - knee) / knee);
}

DrawnCoat drawn_coat(const FigureInput& input) {
  DrawnCoat coat;
  coat.coat = input.coat.value_or(Coat::double_coat);
  coat.stepped = input.stepped;
  const double scale = coat_scale(input.weight);
  const auto lengths = drawn_lengths(input);
  for (std::size_t i = 0; i < region_count; ++i) {
    const auto region = static_cast<Region>(i);
    coat.length[i] = softened(lengths[i].in_mm() * scale, longest_drawn(region, coat.coat));
  }
  return coat;
}

/// The dog's outline as it came in; empty if nobody said.
Shape outline_before(FigureInput input) {
  bool any = false;
  for (std::size_t i = 0; i < region_count; ++i) {
    if (!input.came_in[i]) continue;
    any = true;
    input.left[i] = input.came_in[i];
  }
  return any ? silhouette_of(input.build, drawn_coat(input)) : Shape{};
}

struct Bounds {
  Vec low{1e9, 1e9}, high{-1e9, -1e9};
  Vec size() const { return high - low; }
};
Bounds bounds_of(const Shape& shape) {
  Bounds out;
  for (const Ring& ring : shape) {
    for (const Vec& p : ring) {
      out.low = {std::min(out.low.x, p.x), std::min(out.low.y, p.y)};
      out.high = {std::max(out.high.x, p.x), std::max(out.high.y, p.y)};
    }
  }
  return out;
}

/// Where a region is pointed at: its middle if that is seen, else the point of its area farthest
/// from all edges, of an eight by eight grid.
Vec aim(Region region, const Build& build, const Drawing& drawing) {
  const Shape& area = drawing.areas[static_cast<std::size_t>(region)];
  const Vec middle = middle_of(region, build);
  if (area.empty() || (holds(area, middle) && distance_to_edge(area, middle) > 1.2)) return middle;
  const Bounds box = bounds_of(area);
  Vec best = area.front().front();
  double deepest = -1;
  for (int i = 0; i < 64; ++i) {
    const Vec p{box.low.x + box.size().x * (i % 8 + 0.5) / 8,
                box.low.y + box.size().y * (i / 8 + 0.5) / 8};
    if (!holds(area, p)) continue;
    const double deep = distance_to_edge(area, p);
    if (deep > deepest) {
      deepest = deep;
      best = p;
    }
  }
  return best;
}

}  // namespace

/// In units of the figure, facing left; what is seen from the other side is its mirror image.
class DrawnDog {
 public:
  explicit DrawnDog(const FigureInput& input)
      : drawing(drawing_of(input.build, drawn_coat(input))),
        before(outline_before(input)),
        bounds(bounds_of(unite(drawing.silhouette, before))) {
    for (std::size_t i = 0; i < region_count; ++i) {
      // A little smaller than the region: white lines part neighbours.
      for (const Ring& ring : grown(drawing.areas[i], -0.55)) {
        if (std::abs(area(ring)) > 2) hatched[i].push_back(simplified(ring, 0.25));
      }
    }
  }

  Drawing drawing;
  Shape before;
  Bounds bounds;
  std::array<Shape, region_count> hatched;
};

namespace {
class DogFigure final : public Block {
 public:
  DogFigure(FigureInput input, DrawnDogPtr dog, Length least, Length most, int stretch,
            Origin origin)
      : Block(std::move(origin)),
        input_(std::move(input)),
        alt_(input_.alt),
        dog_(std::move(dog)),
        least_(least),
        most_(std::max(least, most)),
        stretch_(stretch) {}

  Extent measure(Length width, const Setting& setting) const override {
    Extent extent{least_, least_, stretch_};
    extent.too_wide = std::max(Length{}, 2 * Length::mm(margin(setting)) + 20_mm - width);
    return extent;
  }

  void place(const Rect& box, const Setting& setting, Frame& frame) const override {
    const auto [paper, callouts] = arranged(box, setting);
    {
      const TagScope tag(frame, Structure::figure, alt_, {}, box);
      draw_dog(paper, frame);
      draw_leaders(callouts, frame);
      draw_spots(paper, callouts, setting, frame);
      draw_discs(callouts, setting, frame);
    }
    for (std::size_t i = 0; i < callouts.size(); ++i) {
      if (input_.callouts[i].row.empty() || !callouts[i].placed) continue;
      const double r = radius(setting);
      frame.marks.emplace_back(
          LinkMark{{point_of(callouts[i].disc - Vec{r, r}), {Length::mm(2 * r), Length::mm(2 * r)}},
                   input_.callouts[i].row,
                   "row " + std::to_string(input_.callouts[i].number)});
    }
  }

 private:
  /// The dog as large as it can be with room for all its discs, on whichever sides they find it.
  std::pair<OnPaper, std::vector<PlacedCallout>> arranged(const Rect& box,
                                                          const Setting& setting) const {
    constexpr double smallest = 0.4, step = 0.04;
    for (double share = 1;; share -= step) {
      const OnPaper paper = on_paper(box, share);
      if (input_.callouts.empty()) return {paper, {}};
      std::vector<PlacedCallout> callouts = placed(paper, box, setting);
      const bool all = std::ranges::all_of(callouts, &PlacedCallout::placed);
      if (all || share < smallest) return {paper, std::move(callouts)};
    }
  }

  /// The dog in the middle of the box, so large a share of what the box could hold.
  OnPaper on_paper(const Rect& box, double share) const {
    constexpr double edge = 1;
    const double room_x = box.size.width.in_mm() - 2 * edge,
                 room_y = std::min(box.size.height, most_).in_mm() - 2 * edge;
    OnPaper paper;
    paper.scale = std::max(
        0.05, share * std::min(room_x / dog_->bounds.size().x, room_y / dog_->bounds.size().y));
    paper.mirrored = input_.side == Side::right;
    const double middle =
        (dog_->bounds.low.x + dog_->bounds.high.x) / 2 * (paper.mirrored ? -1 : 1);
    paper.left = box.left().in_mm() + box.size.width.in_mm() / 2 - middle * paper.scale;
    paper.ground = box.top().in_mm() + box.size.height.in_mm() / 2 +
                   (dog_->bounds.low.y + dog_->bounds.high.y) / 2 * paper.scale;
    return paper;
  }

  double radius(const Setting& setting) const {
    return 0.78 * setting.type[Role::label].length().in_mm();
  }
  /// Room for one ring of discs on all sides.
  double margin(const Setting& setting) const {
    return input_.callouts.empty() ? 1 : 1.3 + 2 * radius(setting);
  }

  std::vector<PlacedCallout> placed(const OnPaper& paper, const Rect& box,
                                    const Setting& setting) const {
    CalloutRoom room;
    room.figure = paper.in_mm(dog_->drawing.silhouette);
    for (Ring& ring : room.figure) ring = simplified(ring, 0.1);
    const double middle = box.top().in_mm() + box.size.height.in_mm() / 2,
                 up = std::min(box.size.height, most_).in_mm() / 2;
    room.low = {box.left().in_mm(), middle - up};
    room.high = {box.right().in_mm(), middle + up};
    room.radius = radius(setting);
    std::vector<std::vector<Vec>> anchors;
    std::array<int, region_count> pointed{};
    for (const FigureCallout& callout : input_.callouts) {
      std::vector<Vec>& choice = anchors.emplace_back();
      for (const Region region : callout.regions) {
        // Two that point at one region do not share a point, where their leaders would touch.
        const int before = pointed[static_cast<std::size_t>(region)]++;
        choice.push_back(paper.mm(aim(region, input_.build, dog_->drawing)) +
                         Vec{0.4, 1.8} * before);
      }
    }
    return place_callouts(room, anchors);
  }

  void hatch(Region region, const OnPaper& paper, Frame& frame) const {
    const auto i = static_cast<std::size_t>(region);
    if (dog_->hatched[i].empty()) return;
    if (avoided(region)) {
      draw_avoided(paper.contours(dog_->hatched[i]), frame);
    } else if (input_.tools[i]) {
      frame.marks.emplace_back(hatched(paper.contours(dog_->hatched[i]), *input_.tools[i]));
    }
  }

  bool seen(Place place) const { return place.side == Side::both || place.side == input_.side; }
  bool avoided(Region region) const {
    return std::ranges::any_of(input_.spots, [&](const FigureSpot& spot) {
      return spot.kind == SpotKind::avoid && spot.place.region == region && seen(spot.place);
    });
  }

  void draw_dog(const OnPaper& paper, Frame& frame) const {
    const double width = dog_->bounds.size().x * paper.scale;
    const Length weight = Length::mm(std::clamp(0.13 + 0.0012 * width, 0.18, 0.4));
    const auto add = [&](const Painted& painted) {
      PathMark path = paper.path(painted, weight);
      if (!path.contours.empty()) frame.marks.emplace_back(std::move(path));
    };
    if (!dog_->before.empty()) {
      // Behind the dog: where less was taken off than the line is wide, it does not show.
      frame.marks.emplace_back(
          PathMark{paper.contours(dog_->before), std::nullopt, Ink::text, weight, Dash::dashed});
    }
    std::ranges::for_each(dog_->drawing.behind, add);
    add(dog_->drawing.body);
    for (const RegionInfo& region : regions()) {
      if (region.region == Region::ears) continue;
      if (region.region == Region::tail && !dog_->drawing.tail.empty()) continue;
      hatch(region.region, paper, frame);
    }
    std::ranges::for_each(dog_->drawing.inner, add);
    std::ranges::for_each(dog_->drawing.tail, add);
    if (!dog_->drawing.tail.empty()) hatch(Region::tail, paper, frame);
    for (std::size_t i = 0; i < dog_->drawing.ear.size(); ++i) {
      add(dog_->drawing.ear[i]);
      if (i == 0) hatch(Region::ears, paper, frame);
    }
  }

  void draw_leaders(const std::vector<PlacedCallout>& callouts, Frame& frame) const {
    for (const PlacedCallout& callout : callouts) {
      if (!callout.placed) continue;
      frame.marks.emplace_back(StrokeMark{point_of(callout.edge), point_of(callout.anchor),
                                          Length::mm(leader_weight), Ink::text, Dash::solid});
      frame.marks.emplace_back(
          PathMark{{circle(callout.anchor, dot_radius)}, Ink::text, std::nullopt, {}, Dash::solid});
    }
  }

  void draw_spots(const OnPaper& paper, const std::vector<PlacedCallout>& callouts,
                  const Setting& setting, Frame& frame) const {
    const double own = 1.5 * radius(setting), most = 0.06 * dog_->bounds.size().x * paper.scale;
    std::vector<Vec> taken;
    for (const FigureSpot& spot : input_.spots) {
      if (!seen(spot.place)) continue;
      const Vec aimed = paper.mm(aim(spot.place.region, input_.build, dog_->drawing));
      const double size = spot.kind == SpotKind::finding ? own : std::min(own, most);
      const auto free = [&](Vec at) {
        return std::ranges::none_of(taken,
                                    [&](Vec other) { return distance(other, at) < size * 1.1; });
      };
      const auto no_disc = [&](Vec at) {
        return std::ranges::none_of(callouts, [&](const PlacedCallout& one) {
          return one.placed && distance(one.disc, at) < radius(setting) + size / 2;
        });
      };
      // Several on one place stand side by side, away from the discs where there is room.
      Vec at = aimed;
      for (int step = 1; !free(at) && step < 9; ++step) {
        const double way = size * 1.2 * ((step + 1) / 2) * (step % 2 == 1 ? 1 : -1);
        const Vec next = aimed + Vec{way, 0};
        if (free(next) && (no_disc(next) || step >= 7)) at = next;
      }
      taken.push_back(at);
      draw_spot(spot, at, size, setting, frame);
    }
  }

  void draw_discs(const std::vector<PlacedCallout>& callouts, const Setting& setting,
                  Frame& frame) const {
    for (std::size_t i = 0; i < callouts.size(); ++i) {
      if (!callouts[i].placed) continue;
      const bool differs = input_.callouts[i].differs;
      frame.marks.emplace_back(PathMark{{circle(callouts[i].disc, radius(setting))},
                                        differs ? Ink::text : Ink::paper,
                                        Ink::text,
                                        Length::mm(leader_weight),
                                        Dash::solid});
      draw_centred(std::to_string(input_.callouts[i].number), callouts[i].disc, Face::semibold,
                   Role::label, differs ? Ink::paper : Ink::text, setting, frame);
    }
  }

  FigureInput input_;
  std::string alt_;
  DrawnDogPtr dog_;
  Length least_, most_;
  int stretch_;
};
}  // namespace

DrawnDogPtr draw_dog(const FigureInput& input) {
  return std::make_shared<const DrawnDog>(input);
}

BlockPtr dog_figure(FigureInput input, DrawnDogPtr dog, Length least, Length most, int stretch,
                    Origin origin) {
  return std::make_shared<DogFigure>(std::move(input), std::move(dog), least, most, stretch,
                                     std::move(origin));
}
}  // namespace furnish
