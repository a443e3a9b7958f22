#include <webp/decode.h>

#include "output/photo_exif.h"
#include "output/photo_formats.h"

namespace furnish {
namespace {
std::uint32_t little_endian_32(std::string_view bytes) {
  std::uint32_t n = 0;
  for (std::size_t i = 4; i-- > 0;) n = n << 8 | static_cast<unsigned char>(bytes[i]);
  return n;
}

/// Data of the first chunk of a kind in the RIFF container; empty if there is none.
std::string_view chunk(std::string_view bytes, std::string_view kind) {
  constexpr std::size_t container = 12, around = 8;
  std::string_view rest = bytes.substr(std::min(bytes.size(), container));
  while (rest.size() >= around) {
    const std::size_t length = little_endian_32(rest.substr(4));
    if (length > rest.size() - around) break;
    if (rest.substr(0, 4) == kind) return rest.substr(around, length);
    rest.remove_prefix(std::min(rest.size(), around + length + length % 2));
  }
  return {};
}

const std::uint8_t* data(std::string_view bytes) {
  return reinterpret_cast<const std::uint8_t*>(bytes.data());
}
}  // namespace

std::variant<PhotoHeader, PhotoFault> webp_header(std::string_view bytes) {
  WebPBitstreamFeatures features{};
  const VP8StatusCode status = WebPGetFeatures(data(bytes), bytes.size(), &features);
  if (status == VP8_STATUS_NOT_ENOUGH_DATA) return PhotoFault{"is cut off"};
  if (status != VP8_STATUS_OK) return PhotoFault{"is broken"};
  if (features.has_animation != 0) return PhotoFault{"is a moving picture"};
  std::string_view exif = chunk(bytes, "EXIF");
  constexpr std::string_view name{"Exif\0\0", 6};  // some programs put it in front here too
  if (exif.starts_with(name)) exif.remove_prefix(name.size());
  return PhotoHeader{static_cast<std::uint32_t>(features.width),
                     static_cast<std::uint32_t>(features.height), exif_orientation(exif)};
}

std::variant<Pixels, PhotoFault> decode_webp(std::string_view bytes) {
  WebPBitstreamFeatures features{};
  if (WebPGetFeatures(data(bytes), bytes.size(), &features) != VP8_STATUS_OK) {
    return PhotoFault{"is broken"};
  }
  const auto width = static_cast<std::uint32_t>(features.width),
             height = static_cast<std::uint32_t>(features.height);
  const PhotoFault cut{"is cut off or broken"};
  if (features.has_alpha == 0) {
    Pixels out(width, height, 3);
    if (WebPDecodeRGBInto(data(bytes), bytes.size(), out.data.data(), out.data.size(),
                          static_cast<int>(out.stride())) == nullptr) {
      return cut;
    }
    return out;
  }
  std::vector<std::uint8_t> rgba(std::size_t{width} * height * 4);
  if (WebPDecodeRGBAInto(data(bytes), bytes.size(), rgba.data(), rgba.size(), features.width * 4) ==
      nullptr) {
    return cut;
  }
  return on_white(rgba, width, height);
}
}  // namespace furnish
