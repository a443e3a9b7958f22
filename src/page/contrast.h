#pragma once

#include <cstdint>

#include "page/frame.h"

namespace furnish {

/// Colour in sRGB, 0 to 255.
struct Rgb {
  std::uint8_t red, green, blue;
  friend constexpr bool operator==(Rgb, Rgb) = default;
};

/// Greys of the reference print. `quiet` is 7.46:1 on paper.
constexpr Rgb rgb(Ink ink) {
  switch (ink) {
    case Ink::text:
      return {0, 0, 0};
    case Ink::quiet:
      return {0x55, 0x55, 0x55};
    case Ink::tint:
      return {0xE4, 0xE4, 0xE4};
    case Ink::paper:
      break;
  }
  return {255, 255, 255};
}

/// Relative luminance and contrast ratio, 1 to 21 (WCAG 2.2, "relative luminance").
double luminance(Rgb);
double contrast(Rgb, Rgb);
/// The grey a printer without colour makes of it: the one with the same luminance.
Rgb to_grey(Rgb);
}  // namespace furnish
