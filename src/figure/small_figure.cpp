#include <algorithm>
#include <memory>
#include <utility>

#include "figure/callouts.h"
#include "figure/drawn_dog.h"
#include "figure/on_paper.h"
#include "figure/spots.h"

namespace furnish {
namespace {
// By eye, printed at 30 mm and looked at from an arm's length; mm.
constexpr double outline = 0.32, far_outline = 0.2, leader = 0.3;
constexpr double least_sign = 3.4, greatest_sign = 5, sign_share = 0.12;  ///< of the width
constexpr double clear = 0.7;         ///< between a sign and the dog
constexpr double tolerance = 0.3;     ///< units; of an outline without strokes
constexpr double least_filled = 1.1;  ///< radius of a dot on a place too small to fill
constexpr double eye = 1.7;           ///< radius in units

class SmallFigure final : public Block {
 public:
  SmallFigure(FigureInput input, DrawnDogPtr dog, Length width, Origin origin)
      : Block(std::move(origin)), input_(std::move(input)), dog_(std::move(dog)), width_(width) {
    std::erase_if(input_.spots, [&](const FigureSpot& spot) {
      return spot.place.side != Side::both && spot.place.side != input_.side;
    });
  }

  Extent measure(Length width, const Setting&) const override {
    Extent extent;
    extent.wanted = extent.least = height();
    extent.too_wide = std::max(Length{}, width_ - width);
    return extent;
  }
  Length natural_width(const Setting&) const override { return width_; }

  void place(const Rect& box, const Setting& setting, Frame& frame) const override {
    const Rect room{{box.left() + (box.size.width - width_) / 2, box.top()}, {width_, height()}};
    const auto [paper, signs] = arranged(room);
    const TagScope tag(frame, Structure::figure, input_.alt, {}, room);
    draw_dog(paper, frame);
    for (std::size_t i = 0; i < signs.size(); ++i) {
      if (!signs[i].placed) continue;
      frame.marks.emplace_back(StrokeMark{point_of(signs[i].edge), point_of(signs[i].anchor),
                                          Length::mm(leader), Ink::text, Dash::solid});
    }
    for (std::size_t i = 0; i < signs.size(); ++i) {
      const Vec at = signs[i].placed ? signs[i].disc : signs[i].anchor;
      draw_spot(input_.spots[i], at, sign(), setting, frame);
    }
  }

 private:
  double sign() const { return std::clamp(sign_share * width_.in_mm(), least_sign, greatest_sign); }
  /// Of the dog with its signs at the sides, and half a sign above it.
  Length height() const {
    const Vec size = dog_->bounds.size();
    const double wide = width_.in_mm() - (input_.spots.empty() ? 0 : 1.4 * sign());
    return Length::mm(wide * size.y / size.x + (input_.spots.empty() ? 0 : sign()) + 2);
  }

  /// The dog as large as it can be with room for all its signs.
  std::pair<OnPaper, std::vector<PlacedCallout>> arranged(const Rect& box) const {
    constexpr double smallest = 0.6, step = 0.03;
    for (double share = 1;; share -= step) {
      const OnPaper paper = standing_in(box, box.size.height, share, dog_->bounds.low,
                                        dog_->bounds.high, input_.side);
      CalloutRoom room;
      room.figure = paper.in_mm(dog_->drawing.silhouette);
      for (Ring& ring : room.figure) ring = simplified(ring, 0.1);
      room.low = {box.left().in_mm(), box.top().in_mm()};
      room.high = {box.right().in_mm(), box.bottom().in_mm()};
      room.radius = sign() / 2;
      room.clear = clear;
      std::vector<std::vector<Vec>> anchors;
      for (const FigureSpot& spot : input_.spots) {
        anchors.push_back({paper.mm(dog_->aim(spot.place.region))});
      }
      std::vector<PlacedCallout> signs = place_callouts(room, anchors);
      if (share < smallest || std::ranges::all_of(signs, &PlacedCallout::placed)) {
        return {paper, std::move(signs)};
      }
    }
  }

  void draw_dog(const OnPaper& paper, Frame& frame) const {
    const auto draw = [&](const Shape& shape, Ink fill, Ink stroke, double weight) {
      Shape plain = shape;
      for (Ring& ring : plain) ring = simplified(ring, tolerance);
      if (plain.empty()) return;
      frame.marks.emplace_back(
          PathMark{paper.contours(plain), fill, stroke, Length::mm(weight), Dash::solid});
    };
    const Drawing& drawing = dog_->drawing;
    draw(drawing.silhouette, Ink::tint, Ink::quiet, far_outline);
    draw(drawing.near, Ink::paper, Ink::text, outline);
    fill_spots(false, paper, frame);
    if (drawing.tail_in_front) draw(drawing.tail_shape, Ink::paper, Ink::text, outline);
    draw(drawing.ear_shape, Ink::paper, Ink::text, outline);
    fill_spots(true, paper, frame);
    const FaceLines face = skeleton(dog_->build).face;
    frame.marks.emplace_back(PathMark{
        {circle(paper.mm(face.eye), eye * paper.scale)}, Ink::text, std::nullopt, {}, Dash::solid});
    frame.marks.emplace_back(PathMark{{paper.contour(spline(face.nose, SplineEnds::closed), true)},
                                      Ink::text,
                                      std::nullopt,
                                      {},
                                      Dash::solid});
  }

  bool in_front(Region region) const {
    return region == Region::ears || (region == Region::tail && dog_->drawing.tail_in_front);
  }

  /// Black where no tool may touch, striped where it is sore; a place too small to fill is a dot.
  void fill_spots(bool front, const OnPaper& paper, Frame& frame) const {
    for (const FigureSpot& spot : input_.spots) {
      const Region region = spot.place.region;
      if (in_front(region) != front) continue;
      std::vector<Contour> area = paper.contours(dog_->hatched_together({region}));
      if (area.empty()) {
        area = {circle(paper.mm(dog_->aim(region)), least_filled)};
      }
      if (spot.kind == SpotKind::avoid) {
        frame.marks.emplace_back(PathMark{area, Ink::text, std::nullopt, {}, Dash::solid});
      } else {
        frame.marks.emplace_back(HatchMark{area, 45, 0.7_mm, 0.22_mm, Ink::text, false});
      }
    }
  }

  FigureInput input_;
  DrawnDogPtr dog_;
  Length width_;
};
}  // namespace

BlockPtr small_dog_figure(FigureInput input, DrawnDogPtr dog, Length width, Origin origin) {
  return std::make_shared<SmallFigure>(std::move(input), std::move(dog), width, std::move(origin));
}
}  // namespace furnish
