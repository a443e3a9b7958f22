#include "figure/figure.h"

#include <algorithm>
#include <memory>
#include <utility>

#include "figure/callouts.h"
#include "figure/drawn_dog.h"
#include "figure/friction.h"
#include "figure/on_paper.h"
#include "figure/set_text.h"
#include "figure/spots.h"

namespace furnish {
namespace {
constexpr double leader_weight = 0.25, dot_radius = 0.5, covered_radius = 0.75;  // mm
constexpr double smallest_ring = 2.4, largest_ring = 3.6;                        // mm

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
      if (input_.friction) draw_where_it_rubs(paper, frame);
      draw_leaders(callouts, frame);
      draw_spots(paper, callouts, setting, frame);
      draw_discs(callouts, setting, frame);
    }
    for (std::size_t i = 0; i < callouts.size(); ++i) {
      if (input_.callouts[i].row.empty() || !callouts[i].placed) continue;
      const double r = radius(setting);
      const TagScope tag(frame, Structure::link, {}, {}, box);  // moves with the figure
      frame.marks.emplace_back(
          LinkMark{{point_of(callouts[i].disc - Vec{r, r}), {Length::mm(2 * r), Length::mm(2 * r)}},
                   input_.callouts[i].row,
                   input_.callouts[i].says});
      draw_number(i, callouts[i], setting, frame);
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

  OnPaper on_paper(const Rect& box, double share) const {
    return standing_in(box, most_, share, dog_->bounds.low, dog_->bounds.high, input_.side);
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
      const bool covered = points_at_covered(callout, dog_);
      for (const Region region : callout.regions) {
        if (!covered && dog_->covered(region)) continue;
        // Two that point at one region do not share a point, where their leaders would touch.
        const int before = pointed[static_cast<std::size_t>(region)]++;
        choice.push_back(paper.mm(dog_->aim(region)) + Vec{0.4, 1.8} * before);
      }
    }
    return place_callouts(room, anchors);
  }

  void hatch(Region region, const OnPaper& paper, Frame& frame) const {
    const auto i = static_cast<std::size_t>(region);
    if (dog_->hatched[i].empty() || input_.shades[i]) return;
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
      if (!in_front(region.region)) hatch(region.region, paper, frame);
    }
    shade_fields(false, paper, frame);
    std::ranges::for_each(dog_->drawing.inner, add);
    std::ranges::for_each(dog_->drawing.tail, add);
    if (dog_->drawing.tail_in_front) hatch(Region::tail, paper, frame);
    for (std::size_t i = 0; i < dog_->drawing.ear.size(); ++i) {
      add(dog_->drawing.ear[i]);
      if (i == 0) hatch(Region::ears, paper, frame);
      if (i == 0) shade_fields(true, paper, frame);
    }
  }

  /// True for what is drawn over the body.
  bool in_front(Region region) const {
    return region == Region::ears || (region == Region::tail && dog_->drawing.tail_in_front);
  }

  /// Regions of one shade are one field, except that those in front of the body are fields of their
  /// own.
  void shade_fields(bool front, const OnPaper& paper, Frame& frame) const {
    std::array<std::vector<Region>, shade_count> fields;
    for (const RegionInfo& region : regions()) {
      const auto& shade = input_.shades[static_cast<std::size_t>(region.region)];
      if (shade && in_front(region.region) == front) {
        fields[static_cast<std::size_t>(*shade)].push_back(region.region);
      }
    }
    for (std::size_t i = 0; i < shade_count; ++i) {
      if (fields[i].empty()) continue;
      const Shape field = dog_->hatched_together(fields[i]);
      if (!field.empty()) shade(paper.contours(field), static_cast<Shade>(i), frame);
    }
  }

  void draw_where_it_rubs(const OnPaper& paper, Frame& frame) const {
    const double size =
        std::clamp(0.036 * dog_->bounds.size().x * paper.scale, smallest_ring, largest_ring);
    for (const Vec at : friction_points(input_.build)) draw_friction(paper.mm(at), size, frame);
  }

  void draw_leaders(const std::vector<PlacedCallout>& callouts, Frame& frame) const {
    for (std::size_t i = 0; i < callouts.size(); ++i) {
      const PlacedCallout& callout = callouts[i];
      if (!callout.placed) continue;
      const Length weight = Length::mm(leader_weight);
      frame.marks.emplace_back(StrokeMark{point_of(callout.edge), point_of(callout.anchor), weight,
                                          Ink::text, Dash::solid});
      frame.marks.emplace_back(points_at_covered(input_.callouts[i], dog_)
                                   ? PathMark{{circle(callout.anchor, covered_radius)},
                                              Ink::paper,
                                              Ink::text,
                                              weight,
                                              Dash::solid}
                                   : PathMark{{circle(callout.anchor, dot_radius)},
                                              Ink::text,
                                              std::nullopt,
                                              {},
                                              Dash::solid});
    }
  }

  void draw_spots(const OnPaper& paper, const std::vector<PlacedCallout>& callouts,
                  const Setting& setting, Frame& frame) const {
    const double own = 1.5 * radius(setting), most = 0.06 * dog_->bounds.size().x * paper.scale;
    std::vector<Vec> taken;
    for (const FigureSpot& spot : input_.spots) {
      if (!seen(spot.place)) continue;
      const Vec aimed = paper.mm(dog_->aim(spot.place.region));
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
      if (input_.callouts[i].row.empty()) draw_number(i, callouts[i], setting, frame);
    }
  }

  void draw_number(std::size_t i, const PlacedCallout& at, const Setting& setting,
                   Frame& frame) const {
    const FigureCallout& callout = input_.callouts[i];
    draw_centred(std::to_string(callout.number), at.disc, Face::semibold, Role::label,
                 callout.differs ? Ink::paper : Ink::text, setting, frame);
  }

  FigureInput input_;
  std::string alt_;
  DrawnDogPtr dog_;
  Length least_, most_;
  int stretch_;
};
}  // namespace

bool points_at_covered(const FigureCallout& callout, const DrawnDogPtr& dog) {
  return std::ranges::all_of(callout.regions, [&](Region region) { return dog->covered(region); });
}

Length height_of(const DrawnDogPtr& dog, Length width) {
  return scaled(width, dog->bounds.size().y / dog->bounds.size().x);
}

BlockPtr dog_figure(FigureInput input, DrawnDogPtr dog, Length least, Length most, int stretch,
                    Origin origin) {
  return std::make_shared<DogFigure>(std::move(input), std::move(dog), least, most, stretch,
                                     std::move(origin));
}
}  // namespace furnish
