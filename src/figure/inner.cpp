#include "figure/inner.h"

#include <algorithm>
#include <cmath>

#include "figure/areas.h"
#include "figure/strands.h"

namespace furnish {
namespace {
using enum Region;

// All by eye. Lengths are in units of the figure, weights in line widths of its outline, and what
// belongs to the eye in units of an eye that looks ahead.

// Shorter coat than this lets what lies under it be seen.
constexpr double mouth_shows = 9, folds_show = 5, joints_show = 5, toes_show = 5;
constexpr double fine_line = 0.5, face_line = 0.6, mouth_line = 0.75, joint_line = 0.65,
                 eye_line = 0.4;

/// The light in an eye.
constexpr Vec light_at{-0.45, 0.4};
constexpr double light_radius = 0.36;

/// Brows: how many strokes, from which length on, and what of the crown's coat falls into them.
constexpr int brow_strokes = 5;
constexpr double brows_show = 2.5, crown_in_brow = 0.7;
/// Of a stroke: its least length, what each unit of coat adds, and its greatest.
constexpr double least_stroke = 1.6, stroke_each = 0.5, longest_stroke = 6;

/// Hair inside: the box it is looked for in, how far rows are apart and a cluster may stray, in
/// shares of the pattern's distance.
constexpr double hair_left = -64, hair_right = 118, hair_bottom = 6, hair_top = 134;
constexpr double row_pitch = 0.82, stray = 0.7;
/// How deep inside the outline it is drawn: not on the edge, nor in the middle of a coat that lies.
constexpr double least_deep = 2.5, deepest_lying = 14;
constexpr double shortest_shown = 3;  ///< coat
/// Drawn length: of a share of the coat's, and a little.
constexpr double drawn_share = 0.55, drawn_more = 1.2;
constexpr double hanging = 1.4;  ///< weight of downwards against the lay, in coats that hang
constexpr double between_in_cluster = 1.5, cluster_uneven = 2;
constexpr double lock_bend = 0.1, lock_sag = 0.12;  ///< shares of its length
constexpr std::uint32_t share_seed = 3, x_seed = 5, y_seed = 7, uneven_seed = 13;

Painted lines(double weight, Ink ink = Ink::text) {
  return {{}, std::nullopt, ink, weight, false};
}

/// An almond with its light, under a lid.
void draw_eye(const FaceLines& face, std::vector<Painted>& out) {
  const double s = face.eye_size;
  const auto turned = [&](Vec p) {
    const double c = std::cos(face.eye_tilt), d = std::sin(face.eye_tilt);
    return face.eye + Vec{p.x * c + p.y * d, p.y * c - p.x * d} * s;
  };
  const auto ring = [&](std::vector<Knot> knots) {
    for (Knot& knot : knots) knot.at = turned(knot.at);
    return spline(knots, SplineEnds::closed);
  };
  out.push_back({{ring({{{-1.8, -0.5}, true},
                        {{-0.7, 0.95}},
                        {{0.7, 1}},
                        {{1.9, 0.2}, true},
                        {{0.6, -0.95}},
                        {{-0.7, -1}}})},
                 Ink::text,
                 Ink::text,
                 eye_line,
                 true});
  const Vec light = turned(light_at);
  const double r = light_radius * s;
  out.push_back(
      {{spline(
           {{light + Vec{-r, 0}}, {light + Vec{0, r}}, {light + Vec{r, 0}}, {light + Vec{0, -r}}},
           SplineEnds::closed)},
       Ink::paper,
       std::nullopt,
       0,
       true});
  Painted lid = lines(face_line);
  std::vector<Knot> over{{{-2.2, 0.7}}, {{-0.4, 2.1}}, {{1.6, 1.7}}, {{2.9, 0.5}}};
  for (Knot& knot : over) knot.at = turned(knot.at);
  lid.curves.push_back(spline(over, SplineEnds::open));
  out.push_back(std::move(lid));
}

void draw_face(const FaceLines& face, const DrawnCoat& coat, std::vector<Painted>& out) {
  if (coat.at(muzzle) < mouth_shows || coat.coat == Coat::double_coat) {
    Painted mouth = lines(mouth_line);
    mouth.curves.push_back(spline(face.mouth, SplineEnds::open));
    out.push_back(std::move(mouth));
  }
  if (coat.at(cheeks) < folds_show) {
    Painted folds = lines(fine_line, Ink::quiet);
    for (const auto& fold : face.folds) folds.curves.push_back(spline(fold, SplineEnds::open));
    out.push_back(std::move(folds));
  }
  draw_eye(face, out);
  const double brow = std::max({coat.at(eyes), coat.at(crown) * crown_in_brow, coat.brow});
  if ((coat.coat == Coat::wire || coat.coat == Coat::drop) && brow > brows_show) {
    Painted brows = lines(face_line);
    for (int k = 0; k < brow_strokes; ++k) {
      const Vec from = face.eye + Vec{2.6 - 1.3 * k, 4.2 - 0.25 * k};
      const Vec to = from + unit({-0.75, -0.7 - 0.06 * k}) *
                                std::min(least_stroke + stroke_each * brow, longest_stroke);
      brows.curves.push_back(
          {{from, mix(from, to, 0.3) + Vec{-0.6, 0.5}, mix(from, to, 0.7) + Vec{-0.5, 0.3}, to}});
    }
    out.push_back(std::move(brows));
  }
  out.push_back({{spline(face.nose, SplineEnds::closed)}, Ink::text, Ink::text, face_line, true});
  const Vec n = face.nostril;
  out.push_back(
      {{spline({{n + Vec{-0.8, 0.1}}, {n + Vec{0, 0.5}}, {n + Vec{0.8, 0.1}}, {n + Vec{0.1, -0.1}}},
               SplineEnds::closed)},
       Ink::paper,
       std::nullopt,
       0,
       true});
}

/// A hair or lock inside: from `at` along the lay, bent by its weight.
std::vector<Bezier> lock(Vec at, Vec lay, double length) {
  const Vec side = left_of(lay) * (lock_bend * length);
  const Vec to = at + lay * length + Vec{0, -lock_sag * length};
  return {{at, mix(at, to, 0.35) + side, mix(at, to, 0.7) + side * 0.8, to}};
}

/// How hair inside is shown, by kind of coat.
struct Pattern {
  double every;  ///< distance of clusters, units
  int in_cluster;
  double share;    ///< of the clusters that are drawn
  double longest;  ///< units
};
Pattern pattern_of(Coat coat) {
  switch (coat) {
    case Coat::double_coat:
      return {13, 3, 0.5, 6};
    case Coat::silky:
      return {12, 2, 0.6, 9};
    case Coat::drop:
      return {9, 1, 0.75, 16};
    case Coat::wire:
      return {9, 1, 0.6, 3.4};
    case Coat::curly:
      return {8.5, 1, 0.55, 2.6};
    case Coat::smooth:
    case Coat::hairless:
      break;
  }
  return {20, 0, 0, 0};
}

Region region_at(const Drawing& drawing, Vec p) {
  for (std::size_t i = 0; i < region_count; ++i) {
    if (holds(drawing.areas[i], p)) return static_cast<Region>(i);
  }
  return pads;
}

void draw_hair(const DrawnCoat& coat, const Drawing& drawing, std::vector<Painted>& out) {
  const Pattern pattern = pattern_of(coat.coat);
  if (pattern.in_cluster == 0) return;
  Painted hairs = lines(fine_line);
  std::uint32_t index = 0;
  for (double y = hair_bottom; y < hair_top; y += pattern.every * row_pitch) {
    const double shifted = std::fmod(y, 2 * pattern.every) < pattern.every ? 0 : pattern.every / 2;
    for (double x = hair_left + shifted; x < hair_right; x += pattern.every) {
      ++index;
      if (scatter(share_seed, index) > pattern.share) continue;
      const Vec at{x + (scatter(x_seed, index) - 0.5) * pattern.every * stray,
                   y + (scatter(y_seed, index) - 0.5) * pattern.every * stray};
      const Region region = region_at(drawing, at);
      const double length = coat.at(region);
      if (region == pads || region == ears || region == eyes || region == tail) continue;
      const double deep = distance_to_edge(drawing.near, at);
      const bool lies = coat.coat != Coat::drop && coat.coat != Coat::curly;
      if (deep < least_deep || (lies && deep > deepest_lying)) continue;
      if (length < shortest_shown || (region == muzzle && coat.coat != Coat::wire)) continue;
      Vec lay = lay_of(region, coat.coat);
      if (coat.coat == Coat::drop || coat.coat == Coat::silky) lay = unit(lay + Vec{0, -hanging});
      const double drawn = std::min(pattern.longest, drawn_share * length + drawn_more);
      for (int k = 0; k < pattern.in_cluster; ++k) {
        const Vec from = at + left_of(lay) * (between_in_cluster * k) +
                         lay * (scatter(uneven_seed, index * 4 + static_cast<std::uint32_t>(k)) *
                                cluster_uneven);
        if (!holds(drawing.near, from + lay * drawn)) continue;
        if (coat.coat == Coat::curly) {
          hairs.curves.push_back(
              {{from, from + Vec{0.2, 1.6}, from + Vec{2.2, 1.6}, from + Vec{2.4, 0}}});
        } else {
          hairs.curves.push_back(lock(from, lay, drawn));
        }
      }
    }
  }
  out.push_back(std::move(hairs));
}
}  // namespace

std::vector<Painted> inner_lines(const Skeleton& bones, const DrawnCoat& coat,
                                 const Drawing& drawing) {
  std::vector<Painted> out;
  draw_hair(coat, drawing, out);
  Painted joints = lines(joint_line, Ink::quiet);
  for (std::size_t i = 0; i < bones.creases.size(); ++i) {
    if (coat.at(bones.crease_region[i]) < joints_show) {
      joints.curves.push_back(spline(bones.creases[i], SplineEnds::open));
    }
  }
  out.push_back(std::move(joints));
  if (coat.at(feet) < toes_show) {
    Painted toe_lines = lines(joint_line);
    for (const auto& line : bones.toes) toe_lines.curves.push_back(spline(line, SplineEnds::open));
    out.push_back(std::move(toe_lines));
  }
  draw_face(bones.face, coat, out);
  return out;
}
}  // namespace furnish
