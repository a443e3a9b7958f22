#include "figure/skeleton.h"

#include <algorithm>

#include "figure/bone.h"
#include "figure/head.h"
#include "figure/tail.h"

namespace furnish {
namespace {
using enum Region;
// A hind leg bends from the foot up to the thigh, a foreleg up to the elbow.
constexpr double foot_height = 10, elbow_height = 47, thigh_height = 64;
// Of the medium dog the trunk stretches from behind the withers to before the rump.
constexpr double stretch_from = 8, stretch_length = 48;
// What a build adds to the medium dog, in units of the figure. By eye, from dogs so built.
constexpr double long_body_adds = 20, short_body_adds = -9;
constexpr double long_legs_add = 7, heavy_long_legs_add = 3, short_legs_add = -19;
// The far legs stand a little before and behind the near ones, and higher on the page.
constexpr Vec far_front_offset{7, 1.4}, far_rear_offset{-12, 1.4};
constexpr Skin bare = Skin::bare, covered = Skin::covered;

// The trunk from the occiput over the back, down behind the thigh and forward under the belly to
// the throat. The head's landmarks close it.
const SkinPart trunk{
    {{-22, 127.8}, neck},      {{-15.4, 119.2}, neck},
    {{-8, 110.6}, neck},       {{0, 104.8}, shoulders},
    {{9, 102.3}, back},        {{19, 100.2}, back},
    {{33, 99.2}, back},        {{47, 100}, loin},
    {{59, 100.8}, loin},       {{69, 99.6}, rump},
    {{77, 96.2}, rump},        {{82.5, 91.5}, rump, covered},
    {{84, 84}, rump, covered}, {{76, 68}, tuck_up, covered},
    {{66, 60}, tuck_up},       {{60, 57.4}, tuck_up},
    {{53, 55.2}, belly},       {{42, 52}, belly},
    {{28, 48.8}, belly},       {{14, 47}, belly},
    {{4, 46.6}, belly},        {{-6, 48}, chest},
    {{-13, 51.5}, chest},      {{-19.5, 57}, chest},
    {{-24, 64}, chest},        {{-26.3, 72}, chest},
    {{-26.6, 78}, ruff},       {{-27.2, 84.6}, ruff},
    {{-29.4, 91.4}, throat},   {{-32.4, 97.4}, throat},
};

const SkinPart front{
    {{-2, 72}, shoulders, covered},
    {{3, 62}, fringe, covered},
    {{3.5, 53}, fringe},
    {{1.4, 48.2}, fringe},
    {{-0.8, 42}, fringe},
    {{-2.6, 35}, fringe},
    {{-3.6, 28}, fringe},
    {{-3.1, 23.5}, fringe},
    {{-3.5, 17.5}, fringe},
    {{-4.6, 11.5}, feet},
    {{-4.1, 7.5}, feet},
    {{-3.4, 3}, pads, bare},
    {{-4.6, 0.8}, pads, bare},
    {{-9, 0.5}, pads, bare},
    {{-16, 0.2}, pads, bare},
    {{-19.8, 1}, feet},
    {{-20.8, 3.6}, feet},
    {{-19, 7.8}, feet},
    {{-15.6, 10}, feet},
    {{-12.8, 12}, front_legs},
    {{-12.3, 17}, front_legs},
    {{-13, 23.5}, front_legs},
    {{-12.6, 28}, front_legs},
    {{-12.9, 34}, front_legs},
    {{-14.1, 44}, front_legs},
    {{-15, 54}, front_legs, covered},
    {{-14.2, 62}, chest, covered},
    {{-9, 74}, shoulders, covered},
};

const SkinPart rear{
    {{68, 92}, rump, covered},
    {{79, 95}, rump, covered},
    {{83.4, 91}, rump},
    {{86.8, 84.5}, breeches},
    {{88, 77}, breeches},
    {{87, 68}, breeches},
    {{84.8, 59}, breeches},
    {{84.2, 50}, breeches},
    {{86.6, 41}, breeches},
    {{91, 33.5}, hocks},
    {{93.6, 29.4}, hocks},
    {{93.6, 26}, hocks},
    {{91.8, 19}, hocks},
    {{90, 12}, feet},
    {{90, 7}, feet},
    {{90.6, 3}, feet},
    {{89.4, 0.8}, pads, bare},
    {{85, 0.4}, pads, bare},
    {{78, 0.2}, pads, bare},
    {{74, 1}, pads, bare},
    {{73, 3.6}, feet},
    {{74.8, 7.8}, feet},
    {{78, 10}, feet},
    {{81.2, 12}, hocks},
    {{83, 18}, hocks},
    {{84, 24.6}, hocks},
    {{82.4, 29}, rear_legs},
    {{77.6, 34}, rear_legs},
    {{71, 39.4}, rear_legs},
    {{65, 44.5}, rear_legs},
    {{62.2, 49.6}, rear_legs},
    {{62.2, 55}, rear_legs},
    {{63.6, 60}, tuck_up, covered},
    {{65, 70}, tuck_up, covered},
    {{64, 82}, loin, covered},
};

using Line = std::vector<Knot>;
const std::vector<Line> creases{
    {{{-14.6, 57}}, {{-16.4, 63}}, {{-19.4, 69}}},   // point of the shoulder
    {{{2.4, 47.4}}, {{3.8, 51.5}}, {{3, 56}}},       // elbow
    {{{64.4, 60.6}}, {{67, 66}}, {{68.5, 72}}},      // flank over the stifle
    {{{84.6, 35.6}}, {{86.6, 31.6}}, {{88, 26.6}}},  // tendon of the hock
    {{{4, 97}}, {{-2, 89}}, {{-9, 81}}},             // shoulder blade
};
const std::vector<Region> crease_regions{chest, front_legs, rear_legs, hocks, shoulders};

const std::vector<Line> toes{
    {{{-17.4, 1.2}}, {{-17.3, 3}}, {{-16, 4.6}}}, {{{-13.4, 1}}, {{-13.2, 3.2}}, {{-11.6, 5}}},
    {{{-9.4, 1}}, {{-9.2, 2.8}}, {{-8, 4.2}}},    {{{76.3, 1.2}}, {{76.4, 3}}, {{77.7, 4.6}}},
    {{{80.2, 1}}, {{80.4, 3.2}}, {{82, 5}}},      {{{84.2, 1}}, {{84.4, 2.8}}, {{85.6, 4.2}}},
};

void build_all(std::vector<Knot>& line, const Build& build) {
  for (Knot& knot : line) knot.at = built(knot.at, build);
}
void build_all(SkinPart& part, const Build& build) {
  for (Landmark& landmark : part) landmark.at = built(landmark.at, build);
}
template <typename Lines>
void build_each(Lines& lines, const Build& build) {
  for (auto& line : lines) build_all(line, build);
}

/// As built(), for points whose legs bend between the foot and `knee`.
Vec built_below(double knee, Vec p, const Build& build) {
  p = boned(p, build.bone.value_or(Bone::medium));
  const BodyLength body = build.body.value_or(BodyLength::medium);
  const double longer = body == BodyLength::long_body    ? long_body_adds
                        : body == BodyLength::short_body ? short_body_adds
                                                         : 0;
  p.x += longer * std::clamp((p.x - stretch_from) / stretch_length, 0.0, 1.0);

  const Legs legs = build.legs.value_or(Legs::medium);
  const double taller = legs == Legs::short_legs    ? short_legs_add
                        : legs != Legs::long_legs   ? 0
                        : build.bone == Bone::heavy ? heavy_long_legs_add
                                                    : long_legs_add;
  p.y += taller * std::clamp((p.y - foot_height) / (knee - foot_height), 0.0, 1.0);
  return p;
}
}  // namespace

Vec built(Vec p, const Build& build) {
  return built_below(elbow_height, p, build);
}

Skeleton skeleton(const Build& build, TailEnd tail_end) {
  Skeleton out;
  const Head head = head_of(build.nose.value_or(NoseLength::medium));
  out.body = head.outline;
  out.body.insert(out.body.end(), trunk.begin(), trunk.end());
  out.face = head.face;
  out.front_leg = front;
  out.rear_leg = rear;
  out.creases = creases;
  out.crease_region = crease_regions;
  out.toes = toes;
  out.ear = ear_of(build.ears.value_or(EarType::prick), head);
  out.tail = tail_of(build.tail.value_or(TailType::sabre), tail_end);

  const auto leg = [&](auto& points) {
    for (auto& point : points) point.at = leg_boned(point.at, build.bone.value_or(Bone::medium));
  };
  leg(out.front_leg);
  leg(out.rear_leg);
  std::ranges::for_each(out.toes, leg);

  build_all(out.body, build);
  build_all(out.front_leg, build);
  for (Landmark& landmark : out.rear_leg) {
    landmark.at = built_below(thigh_height, landmark.at, build);
  }
  build_each(out.creases, build);
  build_each(out.toes, build);
  build_all(out.ear.outline, build);
  build_each(out.ear.inner, build);
  // The tail moves as its root does, and keeps its form.
  const Vec root = out.tail.spine.front().at, shift = built(root, build) - root;
  for (Knot& knot : out.tail.spine) knot.at = knot.at + shift;
  out.face.eye = built(out.face.eye, build);
  out.face.nostril = built(out.face.nostril, build);
  build_all(out.face.nose, build);
  build_all(out.face.mouth, build);
  build_each(out.face.folds, build);
  out.far_front = far_front_offset;
  out.far_rear = far_rear_offset;
  return out;
}
}  // namespace furnish
