#include <turbojpeg.h>

#include <algorithm>
#include <memory>
#include <span>
#include <type_traits>

#include "output/photo_exif.h"
#include "output/photo_formats.h"

namespace furnish {
namespace {
using Handle = std::unique_ptr<std::remove_pointer_t<tjhandle>, decltype(&tjDestroy)>;

/// A picture of a camera has at most a dozen; thousands only serve to keep a reader busy.
constexpr int most_scans = 100;

/// What stands in a file before and between its scans.
struct Segments {
  std::uint32_t width = 0, height = 0, components = 0;
  bool adobe = false;  ///< by Adobe's marker, with which CMYK is stored as what ink leaves white
  int scans = 0;
  bool ends = false;      ///< the mark of its end is there
  std::string_view exif;  ///< from its TIFF header on
};

std::uint32_t big_endian_16(std::string_view bytes, std::size_t at) {
  return static_cast<std::uint32_t>(static_cast<unsigned char>(bytes[at])) << 8 |
         static_cast<unsigned char>(bytes[at + 1]);
}

/// Markers of ISO/IEC 10918-1, table B.1.
bool begins_frame(unsigned char marker) {
  return marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 && marker != 0xCC;
}
bool stands_alone(unsigned char marker) {
  return marker == 0x01 || (marker >= 0xD0 && marker <= 0xD8);
}

Segments segments_of(std::string_view bytes) {
  constexpr unsigned char end_of_image = 0xD9, start_of_scan = 0xDA, app1 = 0xE1, app14 = 0xEE;
  constexpr std::string_view exif_name{"Exif\0\0", 6}, adobe_name{"Adobe"};
  Segments found;
  std::size_t at = 0;
  // Entropy-coded data has 0xFF only before 0x00 and restart markers, which are passed over.
  while ((at = bytes.find('\xFF', at)) != std::string_view::npos && at + 1 < bytes.size()) {
    const auto marker = static_cast<unsigned char>(bytes[++at]);
    if (marker == 0xFF || marker == 0x00 || stands_alone(marker)) {
      at += marker == 0xFF ? 0 : 1;
      continue;
    }
    if (marker == end_of_image) found.ends = true;
    if (marker == end_of_image || at + 3 > bytes.size()) break;
    const std::size_t length = big_endian_16(bytes, at + 1);
    const std::string_view body = bytes.substr(at + 1, std::max<std::size_t>(length, 2)).substr(2);
    if (begins_frame(marker) && body.size() >= 6 && found.width == 0) {
      found.height = big_endian_16(body, 1);
      found.width = big_endian_16(body, 3);
      found.components = static_cast<unsigned char>(body[5]);
    }
    if (marker == app1 && body.starts_with(exif_name) && found.exif.empty()) {
      found.exif = body.substr(exif_name.size());
    }
    if (marker == app14 && body.starts_with(adobe_name)) found.adobe = true;
    if (marker == start_of_scan) ++found.scans;
    at += 1 + length;
  }
  return found;
}

/// The least size at which the library decodes that has `least` pixels on both sides.
LeastSize decoded_size(const Segments& whole, LeastSize least) {
  int count = 0;
  const tjscalingfactor* const factors = tjGetScalingFactors(&count);
  LeastSize best{whole.width, whole.height};
  for (const tjscalingfactor& factor : std::span(factors, static_cast<std::size_t>(count))) {
    const auto scaled = [&](std::uint32_t side) {
      return static_cast<std::uint32_t>(TJSCALED(static_cast<int>(side), factor));
    };
    const LeastSize size{scaled(whole.width), scaled(whole.height)};
    if (size.width >= least.width && size.height >= least.height && size.width <= best.width) {
      best = size;
    }
  }
  return best;
}

/// Ink to light by the simple rule, each ink taking its share, as programs do that know no press.
Pixels from_cmyk(const std::vector<std::uint8_t>& inks, LeastSize size, bool white_is_stored) {
  Pixels out(size.width, size.height, 3);
  const auto white = [&](std::uint8_t stored) {
    return static_cast<unsigned>(white_is_stored ? stored : 255 - stored);
  };
  for (std::size_t from = 0, to = 0; from < inks.size(); from += 4, to += 3) {
    for (std::size_t c = 0; c < 3; ++c) {
      const unsigned light = white(inks[from + c]) * white(inks[from + 3]);
      out.data[to + c] = static_cast<std::uint8_t>((light + 127) / 255);
    }
  }
  return out;
}
}  // namespace

std::variant<PhotoHeader, PhotoFault> jpeg_header(std::string_view bytes) {
  const Segments found = segments_of(bytes);
  if (found.scans > most_scans) return PhotoFault{"is not stored as a camera stores its photos"};
  if (found.width == 0 || found.height == 0 || found.scans == 0 || !found.ends) {
    return PhotoFault{"is cut off"};
  }
  return PhotoHeader{found.width, found.height, exif_orientation(found.exif)};
}

std::variant<Pixels, PhotoFault> decode_jpeg(std::string_view bytes, LeastSize least) {
  const Segments whole = segments_of(bytes);
  if (whole.width == 0 || whole.height == 0) return PhotoFault{"is cut off"};
  const Handle handle(tjInitDecompress(), tjDestroy);
  if (!handle) return PhotoFault{"cannot be read: out of memory"};
  const LeastSize size = decoded_size(whole, least);
  const std::uint32_t channels = whole.components == 4 ? 4 : whole.components == 1 ? 1 : 3;
  Pixels out(size.width, size.height, channels);
  const int format = channels == 4 ? TJPF_CMYK : channels == 1 ? TJPF_GRAY : TJPF_RGB;
  const int failed =
      tjDecompress2(handle.get(), reinterpret_cast<const unsigned char*>(bytes.data()),
                    bytes.size(), out.data.data(), static_cast<int>(size.width), 0,
                    static_cast<int>(size.height), format, TJFLAG_ACCURATEDCT | TJFLAG_LIMITSCANS);
  if (failed != 0) {
    // The library tells of its first warning, or of what made it give up. Cameras leave things
    // between the segments that it warns of and that harm nothing.
    const std::string_view says = tjGetErrorStr2(handle.get());
    const auto speaks_of = [&](std::string_view what) { return says.find(what) != says.npos; };
    if (speaks_of("remature end")) return PhotoFault{"is cut off"};
    if (!speaks_of("extraneous bytes") && !speaks_of("JFIF revision")) {
      return PhotoFault{"is broken: " + std::string(says)};
    }
  }
  if (channels == 4) return from_cmyk(out.data, size, whole.adobe);
  return out;
}

std::optional<std::string> encode_jpeg(const Pixels& pixels, int quality) {
  const Handle handle(tjInitCompress(), tjDestroy);
  if (!handle) return std::nullopt;
  const bool grey = pixels.channels == 1;
  unsigned char* data = nullptr;
  unsigned long size = 0;
  const int failed =
      tjCompress2(handle.get(), pixels.data.data(), static_cast<int>(pixels.width), 0,
                  static_cast<int>(pixels.height), grey ? TJPF_GRAY : TJPF_RGB, &data, &size,
                  grey ? TJSAMP_GRAY : TJSAMP_420, quality, TJFLAG_ACCURATEDCT);
  const std::unique_ptr<unsigned char, decltype(&tjFree)> owner(data, tjFree);
  if (failed != 0) return std::nullopt;
  return std::string(reinterpret_cast<const char*>(data), size);
}
}  // namespace furnish
