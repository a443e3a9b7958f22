#include "figure/drawn_dog.h"

#include <algorithm>
#include <cmath>
#include <deque>
#include <utility>

#include "figure/areas.h"
#include "figure/bone.h"
#include "figure/lengths.h"

namespace furnish {
namespace {
/// Longest coat that is drawn, in units of the figure: what still leaves a head, a neck and legs to
/// be seen. By eye. Coats that hang to the ground do so; their heads are kept clear all the same.
double longest_drawn(Region region, Coat coat) {
  const bool hangs = coat == Coat::drop || coat == Coat::silky;
  if (in_group(region, Group::head)) {
    if (hangs) return 22;
    if (region == Region::muzzle && coat == Coat::wire) return 24;
    if (region == Region::crown && coat == Coat::curly) return 22;
    return region == Region::ears ? 14 : 9;
  }
  if (hangs) return 80;
  if (coat == Coat::double_coat) return in_group(region, Group::furnishings) ? 24 : 15;
  switch (region) {
    case Region::front_legs:
    case Region::fringe:
    case Region::rear_legs:
    case Region::hocks:
      return 14;
    case Region::feet:
      return 8;
    case Region::tail:
      return 16;
    default:
      return 12;
  }
}

/// As it is up to half of `most`, then ever less of it: never over `most`, and more coat is never
/// drawn shorter than less.
double softened(double length, double most) {
  const double knee = most / 2;
  if (length <= knee) return length;
  return most - knee * std::exp(-(length - knee) / knee);
}

/// What is left over the eyes. Brows go with a beard, which no region measures; a fringe too long
/// to see through is tied up. Common practice, no source.
void dress_head(const std::array<Length, region_count>& lengths, DrawnCoat& coat) {
  constexpr double brow_of_beard = 0.6, of_fringe = 0.8, pulled_flat = 2;
  constexpr Length beard_from = 20_mm, hides_eyes_from = 60_mm;
  const auto mm = [&](Region region) { return lengths[static_cast<std::size_t>(region)]; };
  double& crown = coat.length[static_cast<std::size_t>(Region::crown)];
  if (coat.coat == Coat::wire && mm(Region::muzzle) >= beard_from) {
    coat.brow = brow_of_beard * coat.at(Region::muzzle);
  }
  if (coat.coat != Coat::drop) return;
  if (mm(Region::crown) >= hides_eyes_from) {
    coat.tied = crown;
    crown = std::min(crown, pulled_flat);
  } else {
    coat.brow = of_fringe * crown;
  }
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
  coat.tail_end = input.tail_end;
  dress_head(lengths, coat);
  return coat;
}

std::vector<Region> marked(const FigureInput& input) {
  std::vector<Region> out;
  for (const FigureSpot& spot : input.spots) out.push_back(spot.place.region);
  return out;
}

Build with_bone(const FigureInput& input) {
  Build out = input.build;
  out.bone = bone_of(input.build, input.weight);
  return out;
}

/// The dog's outline as it came in; empty if nobody said.
Shape outline_before(FigureInput input) {
  bool any = false;
  for (std::size_t i = 0; i < region_count; ++i) {
    if (!input.came_in[i]) continue;
    any = true;
    input.left[i] = input.came_in[i];
  }
  return any ? silhouette_of(with_bone(input), drawn_coat(input)) : Shape{};
}

/// A little smaller than the area; specks left out.
Shape inset(const Shape& whole) {
  constexpr double inset_by = 0.55, smallest = 2, tolerance = 0.25;
  Shape out;
  for (const Ring& ring : grown(whole, -inset_by)) {
    if (std::abs(area(ring)) > smallest) out.push_back(simplified(ring, tolerance));
  }
  return out;
}
/// All that a dog is drawn from.
struct DrawnFrom {
  DrawnFrom(const FigureInput& input, Detail how)
      : build(input.build),
        coat(input.coat),
        weight(input.weight),
        left(input.left),
        came_in(input.came_in),
        tail_end(input.tail_end),
        stepped(input.stepped),
        detail(how) {
    if (detail == Detail::small) areas = marked(input);
  }
  friend bool operator==(const DrawnFrom&, const DrawnFrom&) = default;

  Build build;
  std::optional<Coat> coat;
  std::optional<Mass> weight;
  std::array<std::optional<LengthRange>, region_count> left, came_in;
  TailEnd tail_end;
  std::vector<Seam> stepped;
  std::vector<Region> areas;
  Detail detail;
};
}  // namespace

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

DrawnDog::DrawnDog(const FigureInput& input, Detail detail)
    : build(with_bone(input)),
      drawing(detail == Detail::full ? drawing_of(build, drawn_coat(input))
                                     : small_drawing_of(build, drawn_coat(input), marked(input))),
      before(outline_before(input)),
      bounds(bounds_of(before.empty() ? drawing.silhouette : unite(drawing.silhouette, before))) {
  if (detail == Detail::small) return;
  for (std::size_t i = 0; i < region_count; ++i) hatched[i] = inset(drawing.areas[i]);
}

Vec DrawnDog::aim(Region region) const {
  const Shape& seen = drawing.areas[static_cast<std::size_t>(region)];
  const Vec middle = middle_of(region, build);
  if (seen.empty() || (holds(seen, middle) && distance_to_edge(seen, middle) > 1.2)) return middle;
  const Bounds box = bounds_of(seen);
  Vec best = seen.front().front();
  double deepest = -1;
  for (int i = 0; i < 64; ++i) {
    const Vec p{box.low.x + box.size().x * (i % 8 + 0.5) / 8,
                box.low.y + box.size().y * (i / 8 + 0.5) / 8};
    if (!holds(seen, p)) continue;
    const double deep = distance_to_edge(seen, p);
    if (deep > deepest) {
      deepest = deep;
      best = p;
    }
  }
  return best;
}

bool DrawnDog::covered(Region region) const {
  if (!drawing.areas[static_cast<std::size_t>(region)].empty()) return false;
  const Vec at = aim(region);
  return holds(drawing.ear_shape, at) || (drawing.tail_in_front && holds(drawing.tail_shape, at));
}

Shape DrawnDog::hatched_together(const std::vector<Region>& regions) const {
  constexpr double across_seams = 0.2;  // areas touch but for the rounding of their corners
  Shape whole;
  for (const Region region : regions) {
    whole = unite(whole, grown(drawing.areas[static_cast<std::size_t>(region)], across_seams));
  }
  return inset(grown(whole, -across_seams));
}

DrawnDogPtr draw_dog(const FigureInput& input, Detail detail) {
  // A form and its sheet, both sides of a note and a sheet that is made again show one dog.
  constexpr std::size_t most_kept = 4;
  thread_local std::deque<std::pair<DrawnFrom, DrawnDogPtr>> kept;
  DrawnFrom from(input, detail);
  const auto known =
      std::ranges::find(kept, from, [](const auto& one) -> const DrawnFrom& { return one.first; });
  if (known != kept.end()) return known->second;
  if (kept.size() == most_kept) kept.pop_front();
  return kept.emplace_back(std::move(from), std::make_shared<const DrawnDog>(input, detail)).second;
}
}  // namespace furnish
