#include <png.h>

#include <algorithm>

#include "output/photo_exif.h"
#include "output/photo_formats.h"

namespace furnish {
namespace {
constexpr std::string_view signature = "\x89PNG\r\n\x1A\n";

std::uint32_t big_endian_32(std::string_view bytes) {
  std::uint32_t n = 0;
  for (const char c : bytes.substr(0, 4)) n = n << 8 | static_cast<unsigned char>(c);
  return n;
}

/// Data of the first chunk of a kind (PNG, ISO/IEC 15948, 5.3); empty if there is none.
std::string_view chunk(std::string_view bytes, std::string_view kind) {
  constexpr std::size_t around = 12;  // length, kind, check sum
  for (std::string_view rest = bytes.substr(std::min(signature.size(), bytes.size()));
       rest.size() >= around;) {
    const std::size_t length = big_endian_32(rest);
    if (length > rest.size() - around) break;
    if (rest.substr(4, 4) == kind) return rest.substr(8, length);
    rest.remove_prefix(length + around);
  }
  return {};
}
}  // namespace

std::variant<PhotoHeader, PhotoFault> png_header(std::string_view bytes) {
  const std::string_view header = chunk(bytes, "IHDR");
  if (header.size() < 13) return PhotoFault{"is cut off"};
  const PhotoHeader found{big_endian_32(header), big_endian_32(header.substr(4)),
                          exif_orientation(chunk(bytes, "eXIf"))};
  if (found.width == 0 || found.height == 0) return PhotoFault{"has no pixels"};
  return found;
}

std::variant<Pixels, PhotoFault> decode_png(std::string_view bytes) {
  png_image image{};
  image.version = PNG_IMAGE_VERSION;
  const auto broken = [&] {
    const std::string says = image.message;
    png_image_free(&image);
    const bool cut = says.find("end of") != std::string::npos ||
                     says.find("not enough") != std::string::npos ||
                     says.find("read beyond end") != std::string::npos;
    return PhotoFault{cut ? "is cut off" : "is broken: " + says};
  };
  if (png_image_begin_read_from_memory(&image, bytes.data(), bytes.size()) == 0) return broken();
  const bool grey = (image.format & PNG_FORMAT_FLAG_COLOR) == 0,
             clear = (image.format & PNG_FORMAT_FLAG_ALPHA) != 0;
  if (clear) {
    image.format = PNG_FORMAT_RGBA;
    std::vector<std::uint8_t> rgba(PNG_IMAGE_SIZE(image));
    if (png_image_finish_read(&image, nullptr, rgba.data(), 0, nullptr) == 0) return broken();
    return on_white(rgba, image.width, image.height);
  }
  image.format = grey ? PNG_FORMAT_GRAY : PNG_FORMAT_RGB;
  Pixels out(image.width, image.height, grey ? 1 : 3);
  if (png_image_finish_read(&image, nullptr, out.data.data(), 0, nullptr) == 0) return broken();
  return out;
}
}  // namespace furnish
