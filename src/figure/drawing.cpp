#include "figure/drawing.h"

#include <algorithm>

#include "figure/areas.h"
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

Shape whole(std::initializer_list<Shape> shapes) {
  Shape out;
  for (const Shape& shape : shapes) out = unite(out, shape);
  return out;
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
}  // namespace

Drawing drawing_of(const Build& build, const DrawnCoat& coat) {
  const Skeleton bones = skeleton(build);
  const Furred body = furred(bones.body, coat, 11);
  const Furred front = furred(bones.front_leg, coat, 23);
  const Furred rear = furred(bones.rear_leg, coat, 31);
  const Furred tail = furred(bones.tail, coat);
  const Furred fall = curtain(build, coat);
  const Furred ear = furred(bones.ear.outline, ear_coat(coat, bones.ear), 53);

  Drawing out;
  const Shape front_shape = above_ground(front.shape()), rear_shape = above_ground(rear.shape());
  out.tail_shape = above_ground(tail.shape());
  out.ear_shape = above_ground(ear.shape());
  Shape near = whole({body.shape(), front_shape, rear_shape, fall.shape()});
  if (!bones.tail.over_back) near = unite(near, out.tail_shape);
  // Slits and slivers narrower than a hair's stroke, where locks of two parts cross, are no form:
  // fill the one, cut the other.
  out.near = without_specks(above_ground(grown(grown(grown(near, 0.8), -1.3), 0.5)), 10);

  std::vector<HairTip> tips = body.tips;
  for (const Furred* part : {&front, &rear, &fall}) add(tips, part->tips);
  if (!bones.tail.over_back) add(tips, tail.tips);
  out.body = {drawn_edge(out.near, tips, coat.coat), Ink::paper, Ink::text, 1, true};

  const auto far_leg = [&](const Shape& shape, const Furred& leg, Vec by) {
    // What the near side hides needs no curves.
    const Shape seen = without_specks(subtract(moved(shape, by), grown(out.near, -1.5)), 14);
    out.behind.push_back(far_part(seen, moved(leg.tips, by), coat.coat));
  };
  far_leg(front_shape, front, bones.far_front);
  far_leg(rear_shape, rear, bones.far_rear);
  Shape far_ear;
  if (!bones.ear.hangs) {
    far_ear = moved(out.ear_shape, bones.ear.far_ear);
    out.behind.push_back(far_part(far_ear, moved(ear.tips, bones.ear.far_ear), coat.coat));
  }
  out.silhouette =
      whole({out.near, moved(front_shape, bones.far_front), moved(rear_shape, bones.far_rear),
             far_ear, out.ear_shape, out.tail_shape});

  out.areas = areas_of(build, {body, front, rear, tail, fall, ear}, out);
  out.inner = inner_lines(bones, build, coat, out);
  if (bones.tail.over_back) {
    on_top(out.tail_shape, tail, coat.coat, 5.5, out.tail);
  }
  on_top(out.ear_shape, ear, coat.coat, 2.6 + std::min(5.0, 0.4 * coat.at(Region::ears)), out.ear);
  if (coat.at(Region::ears) < 7) {
    Painted lines{{}, std::nullopt, Ink::text, 0.7, false};
    for (const auto& line : bones.ear.inner) lines.curves.push_back(spline(line, Ends::open));
    out.ear.push_back(std::move(lines));
  }
  return out;
}

std::size_t Drawing::curves() const {
  std::size_t sum = 0;
  const auto count = [&](const Painted& painted) {
    for (const auto& line : painted.curves) sum += line.size();
  };
  count(body);
  for (const auto* layer : {&behind, &inner, &tail, &ear}) std::ranges::for_each(*layer, count);
  return sum;
}
}  // namespace furnish
