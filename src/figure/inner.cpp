#include "figure/inner.h"

#include <algorithm>
#include <cmath>

#include "figure/areas.h"

namespace furnish {
namespace {
using enum Region;

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
    return spline(knots, Ends::closed);
  };
  out.push_back({{ring({{{-1.8, -0.5}, true},
                        {{-0.7, 0.95}},
                        {{0.7, 1}},
                        {{1.9, 0.2}, true},
                        {{0.6, -0.95}},
                        {{-0.7, -1}}})},
                 Ink::text,
                 Ink::text,
                 0.4,
                 true});
  const Vec light = turned({-0.45, 0.4});
  const double r = 0.36 * s;
  out.push_back(
      {{spline(
           {{light + Vec{-r, 0}}, {light + Vec{0, r}}, {light + Vec{r, 0}}, {light + Vec{0, -r}}},
           Ends::closed)},
       Ink::paper,
       std::nullopt,
       0,
       true});
  Painted lid = lines(0.6);
  std::vector<Knot> over{{{-2.2, 0.7}}, {{-0.4, 2.1}}, {{1.6, 1.7}}, {{2.9, 0.5}}};
  for (Knot& knot : over) knot.at = turned(knot.at);
  lid.curves.push_back(spline(over, Ends::open));
  out.push_back(std::move(lid));
}

void draw_face(const FaceLines& face, const DrawnCoat& coat, std::vector<Painted>& out) {
  if (coat.at(muzzle) < 9 || coat.coat == Coat::double_coat) {
    Painted mouth = lines(0.75);
    mouth.curves.push_back(spline(face.mouth, Ends::open));
    out.push_back(std::move(mouth));
  }
  if (coat.at(cheeks) < 5) {
    Painted folds = lines(0.5, Ink::quiet);
    for (const auto& fold : face.folds) folds.curves.push_back(spline(fold, Ends::open));
    out.push_back(std::move(folds));
  }
  draw_eye(face, out);
  const double brow = std::max(coat.at(eyes), coat.at(crown) * 0.7);
  if ((coat.coat == Coat::wire || coat.coat == Coat::drop) && brow > 2.5) {
    Painted brows = lines(0.6);
    for (int k = 0; k < 5; ++k) {
      const Vec from = face.eye + Vec{2.6 - 1.3 * k, 4.2 - 0.25 * k};
      const Vec to = from + unit({-0.75, -0.7 - 0.06 * k}) * std::min(1.6 + 0.5 * brow, 6.0);
      brows.curves.push_back(
          {{from, mix(from, to, 0.3) + Vec{-0.6, 0.5}, mix(from, to, 0.7) + Vec{-0.5, 0.3}, to}});
    }
    out.push_back(std::move(brows));
  }
  out.push_back({{spline(face.nose, Ends::closed)}, Ink::text, Ink::text, 0.6, true});
  const Vec n = face.nostril;
  out.push_back(
      {{spline({{n + Vec{-0.8, 0.1}}, {n + Vec{0, 0.5}}, {n + Vec{0.8, 0.1}}, {n + Vec{0.1, -0.1}}},
               Ends::closed)},
       Ink::paper,
       std::nullopt,
       0,
       true});
}

/// A hair or lock inside: from `at` along the lay, bent by its weight.
std::vector<Bezier> lock(Vec at, Vec lay, double length, double bend) {
  const Vec side = left_of(lay) * (bend * length);
  const Vec to = at + lay * length + Vec{0, -0.12 * length};
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
      return {9, 1, 0.8, 16};
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
  Painted hairs = lines(0.5);
  std::uint32_t index = 0;
  for (double y = 6; y < 134; y += pattern.every * 0.82) {
    const double shifted = std::fmod(y, 2 * pattern.every) < pattern.every ? 0 : pattern.every / 2;
    for (double x = -64 + shifted; x < 118; x += pattern.every) {
      ++index;
      if (scatter(3, index) > pattern.share) continue;
      const Vec at{x + (scatter(5, index) - 0.5) * pattern.every * 0.7,
                   y + (scatter(7, index) - 0.5) * pattern.every * 0.7};
      const Region region = region_at(drawing, at);
      const double length = coat.at(region);
      if (region == pads || region == ears || region == eyes || region == tail) continue;
      const double deep = distance_to_edge(drawing.near, at);
      if (deep < 2.5 || (coat.coat != Coat::drop && coat.coat != Coat::curly && deep > 14))
        continue;
      if (length < 3 || (region == muzzle && coat.coat != Coat::wire)) continue;
      Vec lay = lay_of(region, coat.coat);
      if (coat.coat == Coat::drop || coat.coat == Coat::silky) lay = unit(lay + Vec{0, -1.4});
      const double drawn = std::min(pattern.longest, 0.55 * length + 1.2);
      for (int k = 0; k < pattern.in_cluster; ++k) {
        const Vec from = at + left_of(lay) * (1.5 * k) +
                         lay * (scatter(13, index * 4 + static_cast<std::uint32_t>(k)) * 2);
        if (!holds(drawing.near, from + lay * drawn)) continue;
        if (coat.coat == Coat::curly) {
          hairs.curves.push_back(
              {{from, from + Vec{0.2, 1.6}, from + Vec{2.2, 1.6}, from + Vec{2.4, 0}}});
        } else {
          hairs.curves.push_back(lock(from, lay, drawn, 0.1));
        }
      }
    }
  }
  out.push_back(std::move(hairs));
}
}  // namespace

std::vector<Painted> inner_lines(const Skeleton& bones, const Build&, const DrawnCoat& coat,
                                 const Drawing& drawing) {
  std::vector<Painted> out;
  draw_hair(coat, drawing, out);
  Painted joints = lines(0.65, Ink::quiet);
  for (std::size_t i = 0; i < bones.creases.size(); ++i) {
    if (coat.at(bones.crease_region[i]) < 5) {
      joints.curves.push_back(spline(bones.creases[i], Ends::open));
    }
  }
  out.push_back(std::move(joints));
  if (coat.at(feet) < 5) {
    Painted toe_lines = lines(0.65);
    for (const auto& line : bones.toes) toe_lines.curves.push_back(spline(line, Ends::open));
    out.push_back(std::move(toe_lines));
  }
  draw_face(bones.face, coat, out);
  return out;
}
}  // namespace furnish
