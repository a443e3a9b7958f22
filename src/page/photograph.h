#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>

namespace furnish {

/// What a photo's bytes are, whatever its name says.
enum class PhotoKind : std::uint8_t { jpeg, png, webp };

/// A photo as its file has it, looked through and found usable by output's open_photograph(). Only
/// its pixels ever reach a page: what the camera wrote beside them stays in `bytes`.
struct Photograph {
  std::string name;  ///< as the person wrote it: "photos/rex.jpg"
  PhotoKind kind = PhotoKind::jpeg;
  std::uint32_t width = 0, height = 0;  ///< pixels, upright
  /// How the stored pixels lie, 1 to 8 (Exif 2.3, tag 274); 1 is upright.
  int orientation = 1;
  std::string bytes;
  friend bool operator==(const Photograph&, const Photograph&) = default;
};

/// Photos are large, and several pages may show one.
using PhotographPtr = std::shared_ptr<const Photograph>;

/// A part of a photo in whole, upright pixels from its top left corner.
struct PixelRect {
  std::uint32_t x = 0, y = 0, width = 0, height = 0;
  friend bool operator==(const PixelRect&, const PixelRect&) = default;
};

/// The largest part of a picture of `width` × `height` pixels whose sides are as `aspect` (width by
/// height) to 1, to the nearest pixel. With a focus (shares of width and height) the part has it in
/// its middle, or as near to that as the picture's edges let it. Without one, what is too wide goes
/// from both sides alike, and of what is too high one third goes above and two thirds below: an
/// animal's head is in the upper half of its photo, its table in the lower (common practice, no
/// source). pre: width, height and aspect over zero.
PixelRect crop_to(std::uint32_t width, std::uint32_t height, double aspect,
                  const std::optional<std::array<double, 2>>& focus);
}  // namespace furnish
