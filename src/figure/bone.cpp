#include "figure/bone.h"

#include <algorithm>

namespace furnish {
namespace {
/// From 0 where `value` is at `from` or before, to 1 at `to` and beyond, without corners; either
/// may be the greater.
double rise(double value, double from, double to) {
  const double t = std::clamp((value - from) / (to - from), 0.0, 1.0);
  return t * t * (3 - 2 * t);
}
/// 1 in the middle of [from, to], 0 at its ends and outside.
double swell(double value, double from, double to) {
  const double middle = (from + to) / 2;
  return rise(value, from, middle) * rise(value, to, middle);
}

/// How much a point belongs to the head, and to the way up the neck to it.
double in_head(Vec p) {
  return rise(p.x, -20, -30) * rise(p.y, 92, 103);
}
double up_neck(Vec p) {
  return rise(p.x, 3, -27) * rise(p.y, 80, 112);
}

Vec heavy(Vec p) {
  constexpr Vec occiput{-22, 114};
  constexpr double larger = 0.24, deeper_muzzle = 0.22, muzzle_axis = 114;
  constexpr double deeper_chest = 5, thicker_neck = 6, fuller_throat = 6;
  const double head = in_head(p), muzzle = head * rise(p.x, -42, -54);
  p.y += (p.y - muzzle_axis) * deeper_muzzle * muzzle;
  p = p + (p - occiput) * (larger * head);
  p.x -= fuller_throat * swell(p.y, 66, 112) * rise(p.x, -14, -24) * (1 - muzzle);
  p.y -= deeper_chest * swell(p.y, 20, 84) * rise(p.x, -34, -6) * rise(p.x, 78, 52);
  p.y += thicker_neck * swell(p.x, -34, 16) * rise(p.y, 100, 108);
  return p;
}

Vec fine(Vec p) {
  constexpr Vec longer_neck{-2, 9};
  constexpr double narrower = 0.15, head_axis = 115;
  constexpr double deeper_chest = 4, tucked_up = 12, arched = 3, falling = 2.5, throat_in = 4;
  const double head = in_head(p), neck = up_neck(p);
  p.y -= (p.y - head_axis) * narrower * head;
  p.x += throat_in * swell(p.y, 76, 108) * rise(p.x, -16, -24) * (1 - head);
  p = p + longer_neck * neck;
  const double low = swell(p.y, 30, 92);
  p.y -= deeper_chest * low * rise(p.x, -24, -12) * rise(p.x, 32, 16);
  p.y += tucked_up * low * rise(p.x, 16, 54) * rise(p.x, 74, 62);
  const double top = rise(p.y, 84, 94);
  p.y += arched * top * swell(p.x, 24, 80);
  p.y -= falling * top * rise(p.x, 68, 80);
  return p;
}
}  // namespace

Bone bone_of(const Build& build, std::optional<Mass> weight) {
  constexpr double giant_from = 45, stocky_from = 8;  // kg
  const double kg = weight ? weight->in_kg() : 0;
  if (build.bone) return *build.bone;
  if (kg >= giant_from) return Bone::heavy;
  if (build.nose == NoseLength::short_nose && build.legs != Legs::short_legs && kg >= stocky_from) {
    return Bone::heavy;
  }
  if (build.nose == NoseLength::long_nose && build.legs == Legs::long_legs) return Bone::fine;
  return Bone::medium;
}

Vec boned(Vec p, Bone bone) {
  switch (bone) {
    case Bone::heavy:
      return heavy(p);
    case Bone::fine:
      return fine(p);
    case Bone::medium:
      break;
  }
  return p;
}

Vec leg_boned(Vec p, Bone bone) {
  constexpr double thick = 0.3, thin = -0.24;
  constexpr double between_legs = 40, front_axis = -8.6, rear_axis = 85.5;
  const double by = bone == Bone::heavy ? thick : bone == Bone::fine ? thin : 0;
  const bool front = p.x < between_legs;
  const double share = front ? rise(p.y, 64, 46) : rise(p.y, 48, 30);
  const double axis = front ? front_axis : rear_axis;
  p.x += (p.x - axis) * by * share;
  return p;
}
}  // namespace furnish
