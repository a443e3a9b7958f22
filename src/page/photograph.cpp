#include "page/photograph.h"

#include <algorithm>
#include <cmath>

namespace furnish {
namespace {
/// Where a part of `size` out of `whole` begins: with `focus` in its middle, or at `share` of what
/// is left over.
std::uint32_t begin_of(std::uint32_t whole, std::uint32_t size, std::optional<double> focus,
                       double share) {
  const double most = static_cast<double>(whole - size);
  const double at = focus ? *focus * whole - size / 2.0 : most * share;
  return static_cast<std::uint32_t>(std::lround(std::clamp(at, 0.0, most)));
}

std::uint32_t side(double pixels, std::uint32_t most) {
  return static_cast<std::uint32_t>(std::clamp(std::round(pixels), 1.0, static_cast<double>(most)));
}
}  // namespace

PixelRect crop_to(std::uint32_t width, std::uint32_t height, double aspect,
                  const std::optional<std::array<double, 2>>& focus) {
  PixelRect crop{0, 0, width, height};
  if (width > height * aspect) {
    crop.width = side(height * aspect, width);
  } else {
    crop.height = side(width / aspect, height);
  }
  const auto along = [&](std::size_t axis) -> std::optional<double> {
    if (!focus) return std::nullopt;
    return (*focus)[axis];
  };
  crop.x = begin_of(width, crop.width, along(0), 1.0 / 2);
  crop.y = begin_of(height, crop.height, along(1), 1.0 / 3);
  return crop;
}
}  // namespace furnish
