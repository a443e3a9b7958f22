#include "figure/head.h"

namespace furnish {
namespace {
using enum Region;
constexpr Skin bare = Skin::bare, covered = Skin::covered, coated = Skin::coated;

// Landmarks in units of the figure, of a dog 100 high that looks left, its foreleg at x 0. Outlines
// run from the throat under the jaw, round the nose and over the skull. By eye, see Skeleton.

Head medium_head() {
  Head head;
  head.outline = {
      {{-36.5, 102.8}, throat},
      {{-43, 102.6}, cheeks},
      {{-50, 104}, muzzle},
      {{-58, 105.2}, muzzle},
      {{-64.5, 105.4}, muzzle},
      {{-67.6, 106.6}, muzzle},
      {{-68.4, 108.4}, muzzle},
      {{-69.8, 110.6}, muzzle, bare},
      {{-71, 113}, muzzle, bare},
      {{-70.8, 115.6}, muzzle, bare},
      {{-68.6, 117.4}, muzzle},
      {{-63, 118.4}, muzzle},
      {{-57, 119.3}, muzzle},
      {{-53, 120.7}, crown, coated, false, true},
      {{-50, 123.6}, crown, coated, false, true},
      {{-46.6, 127.8}, crown, coated, false, true},
      {{-42, 130.8}, crown},
      {{-36, 132.4}, crown},
      {{-29, 131.8}, neck},
  };
  head.face.eye = {-47.6, 121.8};
  head.face.eye_tilt = 0.22;
  head.face.nose = {{{-69.6, 111.2}}, {{-71.1, 113}},   {{-70.9, 115.6}}, {{-68.6, 117.3}},
                    {{-66.4, 116.4}}, {{-66.2, 114.2}}, {{-67.8, 112.6}}};
  head.face.nostril = {-68.9, 114.1};
  head.face.mouth = {
      {{-68.9, 110.6}}, {{-65.6, 109.2}}, {{-60, 108.9}}, {{-54.6, 109.6}}, {{-51.4, 111.6}}};
  head.face.folds = {{{{-44.2, 107.4}}, {{-40.6, 110.6}}, {{-40, 115}}}};
  return head;
}

Head short_head() {
  Head head;
  head.outline = {
      {{-36.5, 102.2}, throat},
      {{-43, 99.6}, cheeks},
      {{-50, 99.2}, muzzle},
      {{-56, 100.6}, muzzle},
      {{-60.4, 103.2}, muzzle},
      {{-62, 106.4}, muzzle},
      {{-61, 109.6}, muzzle},
      {{-61.6, 113}, muzzle, bare},
      {{-61.8, 115.8}, muzzle, bare},
      {{-60.4, 118.4}, muzzle, bare},
      {{-58.2, 119.4}, muzzle},
      {{-56.4, 119.8}, muzzle},
      {{-55.6, 121.6}, crown, coated, false, true},
      {{-55.8, 125}, crown, coated, false, true},
      {{-54, 129.2}, crown, coated, false, true},
      {{-49.6, 132.6}, crown},
      {{-42.6, 134.2}, crown},
      {{-35, 133.8}, crown},
      {{-28, 131.4}, neck},
  };
  head.face.eye = {-50.8, 121};
  head.face.eye_size = 1.25;
  head.face.nose = {{{-61.4, 113}}, {{-61.9, 115.8}}, {{-60.5, 118.3}}, {{-58.4, 118.8}},
                    {{-57.4, 117}}, {{-58, 114.8}},   {{-59.6, 113.4}}};
  head.face.nostril = {-59.9, 115.7};
  head.face.mouth = {{{-60.4, 112.6}}, {{-59.6, 108.6}}, {{-56.6, 105.4}},
                     {{-51.6, 104.4}}, {{-47.4, 105.8}}, {{-45.4, 109}}};
  head.face.folds = {{{{-56.2, 121}}, {{-54.2, 118.2}}, {{-53.6, 114}}, {{-55, 110.6}}},
                     {{{-41.6, 104.6}}, {{-38.6, 108.8}}, {{-38.6, 113.6}}}};
  head.ear = {-1.4, 1.6};
  return head;
}

Head long_head() {
  Head head;
  head.outline = {
      {{-36, 103.2}, throat},
      {{-44, 103}, cheeks},
      {{-53, 104}, muzzle},
      {{-63, 104.8}, muzzle},
      {{-71, 104.6}, muzzle},
      {{-74.6, 105.6}, muzzle},
      {{-75.6, 107.4}, muzzle},
      {{-77.2, 109.4}, muzzle, bare},
      {{-78.6, 111.6}, muzzle, bare},
      {{-78.4, 114}, muzzle, bare},
      {{-76.2, 115.8}, muzzle},
      {{-69, 117.2}, muzzle},
      {{-61, 118.8}, muzzle},
      {{-55, 120.6}, crown, coated, false, true},
      {{-50.6, 123}, crown, coated, false, true},
      {{-46, 126.4}, crown, coated, false, true},
      {{-41, 129.2}, crown},
      {{-35, 130.8}, crown},
      {{-28.4, 130.6}, neck},
  };
  head.face.eye = {-48.6, 120.8};
  head.face.eye_tilt = 0.25;
  head.face.nose = {{{-77, 110}},   {{-78.7, 111.6}}, {{-78.5, 114}},  {{-76.2, 115.7}},
                    {{-74, 114.9}}, {{-73.8, 112.8}}, {{-75.4, 111.2}}};
  head.face.nostril = {-76.5, 112.7};
  head.face.mouth = {
      {{-76.4, 109.4}}, {{-72.4, 108}}, {{-65, 108}}, {{-57.6, 108.6}}, {{-53.4, 110.6}}};
  head.face.folds = {{{{-44.4, 107}}, {{-41, 110.2}}, {{-40.4, 114.4}}}};
  head.drop_ear = 1.24;
  head.ear = {0.4, -1.2};
  return head;
}

Ear prick() {
  Ear ear;
  ear.outline = {{{-41.4, 128.4}, ears, coated, true},
                 {{-42, 134.6}, ears},
                 {{-40.8, 141.6}, ears},
                 {{-38, 148.2}, ears, coated, true},
                 {{-32.4, 143}, ears},
                 {{-27.6, 135.8}, ears},
                 {{-25.6, 128.6}, ears, covered, true},
                 {{-29, 125.4}, ears, covered},
                 {{-35, 124.6}, ears, covered}};
  ear.inner = {{{{-37.8, 145.6}}, {{-38.4, 139.6}}, {{-37.8, 133.6}}, {{-35.6, 129.4}}},
               {{{-36.8, 145.2}}, {{-33.4, 140.6}}, {{-31.2, 135.6}}, {{-31.8, 131.8}}}};
  ear.far_ear = {-5.4, -0.4};
  return ear;
}

Ear semi_prick() {
  Ear ear;
  ear.outline = {{{-40.4, 128.6}, ears, coated, true},
                 {{-40.4, 135}, ears},
                 {{-39.6, 140.4}, ears},
                 {{-43.4, 139.6}, ears},
                 {{-47.2, 135.6}, ears, coated, true},
                 {{-45.4, 141.4}, ears},
                 {{-41, 145.8}, ears},
                 {{-35.8, 146.2}, ears},
                 {{-30.4, 141}, ears},
                 {{-26.8, 134.4}, ears},
                 {{-25.8, 129}, ears, covered, true},
                 {{-29, 125.8}, ears, covered},
                 {{-35, 125.2}, ears, covered}};
  ear.inner = {{{{-39.6, 140.4}}, {{-37.4, 142.6}}, {{-35.8, 146}}},
               {{{-37, 140}}, {{-36.6, 134.6}}, {{-34.6, 130}}}};
  ear.far_ear = {-5.4, -0.6};
  return ear;
}

Ear drop() {
  Ear ear;
  ear.outline = {{{-34.6, 129.8}, ears, covered},
                 {{-29, 128.6}, ears},
                 {{-26, 124}, ears},
                 {{-25.8, 117}, ears},
                 {{-27.6, 109}, ears},
                 {{-30.8, 102.6}, ears},
                 {{-35.6, 99.4}, ears},
                 {{-40.6, 100.8}, ears},
                 {{-43.6, 106.6}, ears},
                 {{-43.6, 114}, ears},
                 {{-41.6, 122}, ears},
                 {{-39.4, 127.4}, ears, covered}};
  ear.inner = {{{{-31.6, 127.6}}, {{-33.2, 122}}, {{-33.4, 116}}}};
  ear.hangs = true;
  return ear;
}

Ear button() {
  Ear ear;
  ear.outline = {{{-45, 121.8}, ears, coated, true},
                 {{-44, 128.4}, ears},
                 {{-40.8, 134.2}, ears},
                 {{-35.6, 136.6}, ears},
                 {{-30.6, 135.2}, ears},
                 {{-27.8, 130.8}, ears},
                 {{-28.4, 127}, ears, covered},
                 {{-31.6, 127.6}, ears},
                 {{-37.8, 124.6}, ears}};
  ear.inner = {{{{-30.8, 134.2}}, {{-32, 131}}, {{-32.4, 128}}}};
  ear.far_ear = {-6.4, 0.4};
  return ear;
}

Ear rose() {
  Ear ear;
  ear.outline = {{{-40.4, 126.4}, ears},
                 {{-39.8, 130.2}, ears},
                 {{-36.4, 132.6}, ears},
                 {{-31, 131.8}, ears},
                 {{-24, 127.4}, ears, coated, true},
                 {{-28.6, 125.6}, ears},
                 {{-33.4, 122.8}, ears},
                 {{-37.6, 122.6}, ears, covered}};
  ear.inner = {{{{-37.6, 125}}, {{-36.4, 128.4}}, {{-32.4, 129.2}}, {{-27, 127.6}}}};
  ear.hangs = true;
  return ear;
}
}  // namespace

Head head_of(NoseLength nose) {
  switch (nose) {
    case NoseLength::short_nose:
      return short_head();
    case NoseLength::long_nose:
      return long_head();
    case NoseLength::medium:
      break;
  }
  return medium_head();
}

Ear ear_of(EarType type, const Head& head) {
  Ear ear = type == EarType::prick        ? prick()
            : type == EarType::semi_prick ? semi_prick()
            : type == EarType::drop       ? drop()
            : type == EarType::button     ? button()
                                          : rose();
  constexpr double root_of_drop = 128;
  for (Landmark& landmark : ear.outline) {
    if (type == EarType::drop && landmark.at.y < root_of_drop) {
      landmark.at.y = root_of_drop - (root_of_drop - landmark.at.y) * head.drop_ear;
    }
    landmark.at = landmark.at + head.ear;
  }
  for (auto& line : ear.inner) {
    for (Knot& knot : line) knot.at = knot.at + head.ear;
  }
  return ear;
}
}  // namespace furnish
