#include "page/contrast.h"

#include <algorithm>
#include <cmath>

namespace furnish {
namespace {
double linear(std::uint8_t channel) {
  const double share = channel / 255.0;
  // 0.04045 is the threshold of IEC 61966-2-1; WCAG 2.2 prints 0.04045 too since its 2021
  // correction.
  return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
}

std::uint8_t encoded(double share) {
  const double value =
      share <= 0.0031308 ? 12.92 * share : 1.055 * std::pow(share, 1 / 2.4) - 0.055;
  return static_cast<std::uint8_t>(std::lround(std::clamp(value, 0.0, 1.0) * 255));
}
}  // namespace

double luminance(Rgb colour) {
  return 0.2126 * linear(colour.red) + 0.7152 * linear(colour.green) + 0.0722 * linear(colour.blue);
}

double contrast(Rgb a, Rgb b) {
  const auto [dark, light] = std::minmax({luminance(a), luminance(b)});
  return (light + 0.05) / (dark + 0.05);
}

Rgb to_grey(Rgb colour) {
  const std::uint8_t level = encoded(luminance(colour));
  return {level, level, level};
}
}  // namespace furnish
