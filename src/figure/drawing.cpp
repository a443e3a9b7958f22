#include "figure/drawing.h"

#include <algorithm>

#include "figure/areas.h"
#include "figure/face_hair.h"
#include "figure/hanging.h"
#include "figure/inner.h"

namespace furnish {
namespace {
// Under this the paws stand: no hair reaches it.
Shape above_ground(const Shape& shape) {
  const double far = 1000;
  return intersect(shape, {{{-far, 0}, {-far, far}, {far, far}, {far, 0}}});
}

Shape moved(const Shape& shape, Vec by) {
  Shape out = shape;
  for (Ring& ring : out) {
    for (Vec& p : ring) p = p + by;
  }
  return out;
}

std::vector<HairTip> moved(std::vector<HairTip> tips, Vec by) {
  for (HairTip& tip : tips) tip.at = tip.at + by;
  return tips;
}

void add(std::vector<HairTip>& to, const std::vector<HairTip>& tips) {
  to.insert(to.end(), tips.begin(), tips.end());
}

Painted far_part(const Shape& shape, const std::vector<HairTip>& tips, Coat coat) {
  return {drawn_edge(shape, tips, coat, 1.7), Ink::tint, Ink::quiet, 0.7, true};
}

/// A part in front of the body: it covers what is behind, and has no line where it grows out of it.
void on_top(const Shape& shape, const Furred& part, Coat coat, double reach,
            std::vector<Painted>& out) {
  auto edge = drawn_edge(shape, part.tips, coat);
  auto seen = without_hidden(edge, part.hidden, reach);
  out.push_back({std::move(edge), Ink::paper, std::nullopt, 0, true});
  out.push_back({std::move(seen), std::nullopt, Ink::text, 1, false});
}

/// Prick ears grow longer at their edges only a little: most of the hair lies along them.
DrawnCoat ear_coat(const DrawnCoat& coat, const Ear& ear) {
  DrawnCoat out = coat;
  if (!ear.hangs) out.length[static_cast<std::size_t>(Region::ears)] *= 0.4;
  return out;
}

Furred head_and_trunk(const Skeleton& bones, const DrawnCoat& coat) {
  Furred out = furred(bones.body, coat, 11);
  if (coat.tied > 0) tie_up(bones.body, coat, out);
  return out;
}

/// Long hair fills the curl of a tail over the back.
Shape filled_curl(Shape tail, const Tail& bare, const DrawnCoat& coat) {
  constexpr double long_hair = 4, half_of_curl = 7;
  if (!bare.over_back || coat.at(Region::tail) < long_hair) return tail;
  return grown(grown(tail, half_of_curl), -half_of_curl);
}

/// The furred parts of a dog and the shapes they make.
struct Parts {
  Parts(const Build& build, const DrawnCoat& coat)
      : bones(skeleton(build, coat.tail_end)),
        body(head_and_trunk(bones, coat)),
        front(furred(bones.front_leg, coat, 23)),
        rear(furred(bones.rear_leg, coat, 31)),
        tail(furred(bones.tail, coat)),
        fall(curtain(build, coat)),
        ear(furred(bones.ear.outline, ear_coat(coat, bones.ear), 53)),
        front_shape(above_ground(front.shape())),
        rear_shape(above_ground(rear.shape())),
        tail_shape(above_ground(filled_curl(tail.shape(), bones.tail, coat))),
        ear_shape(above_ground(ear.shape())) {
    Shape all = unite({body.shape(), front_shape, rear_shape, fall.shape()});
    if (!bones.tail.over_back) all = unite(all, tail_shape);
    // Slits and slivers narrower than a hair's stroke, where locks of two parts cross, are no form:
    // fill the one, cut the other.
    near = without_specks(above_ground(grown(grown(grown(all, 0.8), -1.3), 0.5)), 10);
  }

  Shape far_ear() const { return bones.ear.hangs ? Shape{} : moved(ear_shape, bones.ear.far_ear); }
  Shape silhouette() const {
    return unite({near, moved(front_shape, bones.far_front), moved(rear_shape, bones.far_rear),
                  far_ear(), ear_shape, tail_shape});
  }

  Skeleton bones;
  Furred body, front, rear, tail, fall, ear;
  Shape front_shape, rear_shape, tail_shape, ear_shape, near;
};

Drawing shapes_of(const Parts& parts) {
  Drawing out;
  out.tail_shape = parts.tail_shape;
  out.ear_shape = parts.ear_shape;
  out.tail_in_front = parts.bones.tail.over_back;
  out.near = parts.near;
  out.silhouette = parts.silhouette();
  return out;
}
}  // namespace

Shape silhouette_of(const Build& build, const DrawnCoat& coat) {
  return Parts(build, coat).silhouette();
}

Drawing small_drawing_of(const Build& build, DrawnCoat coat, const std::vector<Region>& areas) {
  constexpr double coarse = 1.8;
  coat.coarse = coarse;
  const Parts parts(build, coat);
  Drawing out = shapes_of(parts);
  out.areas = areas_of(
      build, {parts.body, parts.front, parts.rear, parts.tail, parts.fall, parts.ear}, out, areas);
  return out;
}

Drawing drawing_of(const Build& build, const DrawnCoat& coat) {
  const Parts parts(build, coat);
  const auto& [bones, body, front, rear, tail, fall, ear, front_shape, rear_shape, tail_shape,
               ear_shape, near] = parts;
  Drawing out = shapes_of(parts);
  out.areas = areas_of(build, {body, front, rear, tail, fall, ear}, out);

  std::vector<HairTip> tips = body.tips;
  for (const Furred* part : {&front, &rear, &fall}) add(tips, part->tips);
  if (!bones.tail.over_back) add(tips, tail.tips);
  out.body = {drawn_edge(out.near, tips, coat.coat), Ink::paper, Ink::text, 1, true};

  // What the near side hides needs no curves.
  const Shape hides = grown(out.near, -1.5);
  const auto far_leg = [&](const Shape& shape, const Furred& leg, Vec by) {
    const Shape seen = without_specks(subtract(moved(shape, by), hides), 14);
    out.behind.push_back(far_part(seen, moved(leg.tips, by), coat.coat));
  };
  far_leg(front_shape, front, bones.far_front);
  far_leg(rear_shape, rear, bones.far_rear);
  if (!bones.ear.hangs) {
    out.behind.push_back(far_part(parts.far_ear(), moved(ear.tips, bones.ear.far_ear), coat.coat));
  }

  out.inner = inner_lines(bones, coat, out);
  if (bones.tail.over_back) {
    on_top(out.tail_shape, tail, coat.coat, 4, out.tail);
  }
  on_top(out.ear_shape, ear, coat.coat, 2.6 + std::min(5.0, 0.4 * coat.at(Region::ears)), out.ear);
  if (coat.at(Region::ears) < 7) {
    Painted lines{{}, std::nullopt, Ink::text, 0.7, false};
    for (const auto& line : bones.ear.inner) lines.curves.push_back(spline(line, SplineEnds::open));
    out.ear.push_back(std::move(lines));
  }
  return out;
}

}  // namespace furnish
