#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace furnish {

/// A picture in memory: rows from the top, 8 bits a channel, grey or red, green, blue in sRGB.
struct Pixels {
  std::uint32_t width = 0, height = 0;
  std::uint32_t channels = 3;  ///< 1 or 3
  std::vector<std::uint8_t> data;

  Pixels() = default;
  Pixels(std::uint32_t w, std::uint32_t h, std::uint32_t c)
      : width(w), height(h), channels(c), data(std::size_t{w} * h * c) {}
  std::uint8_t* row(std::uint32_t y) { return data.data() + stride() * y; }
  const std::uint8_t* row(std::uint32_t y) const { return data.data() + stride() * y; }
  std::size_t stride() const { return std::size_t{width} * channels; }
};

/// Red, green, blue and opacity of each pixel, over white paper. As screens do it: the stored
/// values are mixed, not the light they stand for.
Pixels on_white(const std::vector<std::uint8_t>& rgba, std::uint32_t width, std::uint32_t height);

/// A part of a picture in parts of its pixels.
struct PixelArea {
  double x, y, width, height;
};

/// That part at another size, by a cubic filter as wide as the step in size asks for, so that
/// nothing flickers into patterns; at its own size the part is copied. Whole numbers only, so that
/// every machine gives the same. pre: the area lies inside, width and height over zero.
Pixels resampled(const Pixels&, const PixelArea&, std::uint32_t width, std::uint32_t height);

/// How stored pixels become upright: first mirrored left to right, then turned clockwise.
struct Turn {
  bool mirrored;
  int quarters;  ///< 0 to 3
};
/// Of an orientation as Exif 2.3 counts it, 1 to 8.
Turn turn_of(int orientation);
/// Stored pixels, upright.
Pixels turned(Pixels, Turn);
/// Where an upright area is among the stored pixels. `width` and `height` are the upright
/// picture's.
PixelArea stored_area(const PixelArea& upright, double width, double height, Turn);
}  // namespace furnish
