#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>

#include "output/pixels.h"

namespace furnish {

/// What the first bytes of a picture's file say of it, before anything is decoded.
struct PhotoHeader {
  std::uint32_t width = 0, height = 0;  ///< as stored, not upright
  int orientation = 1;
};

/// Why a picture cannot be used, to follow its name in a sentence: "is cut off".
struct PhotoFault {
  std::string what;
};

/// At least one pixel out of so many by so many is wanted of the whole picture: a decoder may leave
/// out what would be averaged away in any case.
struct LeastSize {
  std::uint32_t width = 1, height = 1;
};

/// Each of the three kinds by its own library. A header is read from any bytes at all and is empty
/// if the file is too broken to have one; pixels are decoded only of a picture whose header was
/// within bounds, at `least` or more on both sides, and are white where it is transparent.
/// What Exif has is read wherever the kind may hold it, for the orientation only.
std::variant<PhotoHeader, PhotoFault> jpeg_header(std::string_view bytes);
std::variant<Pixels, PhotoFault> decode_jpeg(std::string_view bytes, LeastSize least);
std::variant<PhotoHeader, PhotoFault> png_header(std::string_view bytes);
std::variant<Pixels, PhotoFault> decode_png(std::string_view bytes);
std::variant<PhotoHeader, PhotoFault> webp_header(std::string_view bytes);
std::variant<Pixels, PhotoFault> decode_webp(std::string_view bytes);

/// A baseline JPEG without any metadata. `quality` is 1 to 100. Empty if memory ran out.
std::optional<std::string> encode_jpeg(const Pixels&, int quality);
}  // namespace furnish
