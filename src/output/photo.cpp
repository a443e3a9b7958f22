#include "output/photo.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <new>
#include <string_view>
#include <utility>
#include <variant>

#include "base/text.h"
#include "output/photo_formats.h"

namespace furnish {
namespace {
/// How a file begins, and what it is.
struct Beginning {
  std::size_t at;
  std::string_view bytes, kind;
};
using namespace std::string_view_literals;

constexpr std::array<std::pair<Beginning, PhotoKind>, 3> usable{{
    {{0, "\xFF\xD8\xFF"sv, "JPEG"}, PhotoKind::jpeg},
    {{0, "\x89PNG\r\n\x1A\n"sv, "PNG"}, PhotoKind::png},
    {{8, "WEBP"sv, "WebP"}, PhotoKind::webp},
}};

/// Pictures that people have and that are not read. The brands of ISO/IEC 23008-12 tell HEIC.
constexpr std::array<Beginning, 17> others{{
    {4, "ftypheic", "HEIC"},
    {4, "ftypheix", "HEIC"},
    {4, "ftyphevc", "HEIC"},
    {4, "ftyphevx", "HEIC"},
    {4, "ftypheim", "HEIC"},
    {4, "ftypheis", "HEIC"},
    {4, "ftypmif1", "HEIC"},
    {4, "ftypmsf1", "HEIC"},
    {4, "ftypavif", "AVIF"},
    {4, "ftyp", "film"},
    {0, "GIF8", "GIF"},
    {0, "II*\0"sv, "TIFF"},
    {0, "MM\0*"sv, "TIFF"},
    {0, "BM", "BMP"},
    {0, "%PDF", "PDF"},
    {0, "\xFF\x0A", "JPEG XL"},
    {0, "<svg", "SVG"},
}};

bool begins(std::string_view bytes, const Beginning& beginning) {
  return bytes.size() >= beginning.at && bytes.substr(beginning.at).starts_with(beginning.bytes);
}

std::optional<PhotoKind> kind_of(std::string_view bytes) {
  for (const auto& [beginning, kind] : usable) {
    if (begins(bytes, beginning)) return kind;
  }
  return std::nullopt;
}

std::variant<PhotoHeader, PhotoFault> header_of(PhotoKind kind, std::string_view bytes) {
  switch (kind) {
    case PhotoKind::jpeg:
      return jpeg_header(bytes);
    case PhotoKind::png:
      return png_header(bytes);
    case PhotoKind::webp:
      break;
  }
  return webp_header(bytes);
}

std::variant<Pixels, PhotoFault> decode(PhotoKind kind, std::string_view bytes, LeastSize least) {
  switch (kind) {
    case PhotoKind::jpeg:
      return decode_jpeg(bytes, least);
    case PhotoKind::png:
      return decode_png(bytes);
    case PhotoKind::webp:
      break;
  }
  return decode_webp(bytes);
}

void report_kind(const std::string& name, std::string_view bytes, SourceSpan from,
                 DiagnosticSink& sink) {
  const auto other = std::ranges::find_if(others, [&](const auto& o) { return begins(bytes, o); });
  const bool known = other != others.end();
  sink.warning(
          "photo-kind", from,
          known ? fmt::format("the photo '{}' is a {} file, which is not read", name, other->kind)
          : bytes.empty()
              ? fmt::format("the photo '{}' is empty", name)
              : fmt::format("'{}' is no photo: it is not a JPEG, PNG or WebP file", name))
      .hint = known ? "export it as JPEG" : "name a JPEG, PNG or WebP file";
}
}  // namespace

std::optional<Photograph> open_photograph(std::string name, std::string bytes, SourceSpan from,
                                          DiagnosticSink& sink) {
  constexpr std::string_view export_smaller =
      "export it smaller; a sheet needs 3 megapixels at most";
  if (bytes.size() > most_photo_bytes) {
    sink.warning("photo-size", from,
                 fmt::format("the photo '{}' has {} bytes; at most {} ({} MiB) are read", name,
                             bytes.size(), most_photo_bytes, most_photo_bytes / 1024 / 1024))
        .hint = export_smaller;
    return std::nullopt;
  }
  const auto kind = kind_of(bytes);
  if (!kind) {
    report_kind(name, bytes, from, sink);
    return std::nullopt;
  }
  const auto broken = [&](const PhotoFault& fault) {
    sink.warning("photo-broken", from, fmt::format("the photo '{}' {}", name, fault.what)).hint =
        "copy it from the camera again, or export it as JPEG";
    return std::nullopt;
  };
  const auto header = header_of(*kind, bytes);
  if (const auto* fault = std::get_if<PhotoFault>(&header)) return broken(*fault);
  const auto& found = std::get<PhotoHeader>(header);
  if (std::uint64_t{found.width} * found.height > most_photo_pixels) {
    sink.warning("photo-size", from,
                 fmt::format("the photo '{}' has {} × {} pixels; at most {} megapixels are read",
                             name, found.width, found.height, most_photo_pixels / 1'000'000))
        .hint = export_smaller;
    return std::nullopt;
  }
  try {
    const auto pixels = decode(*kind, bytes, {});
    if (const auto* fault = std::get_if<PhotoFault>(&pixels)) return broken(*fault);
  } catch (const std::bad_alloc&) {
    return broken({"cannot be read: out of memory"});
  }
  const bool lies = turn_of(found.orientation).quarters % 2 == 1;
  return Photograph{std::move(name),
                    *kind,
                    lies ? found.height : found.width,
                    lies ? found.width : found.height,
                    found.orientation,
                    std::move(bytes)};
}

std::optional<ReducedPhoto> reduced(const Photograph& photo, const PixelRect& crop,
                                    std::uint32_t width, std::uint32_t height) {
  width = std::clamp(width, 1U, crop.width);
  height = std::clamp(height, 1U, crop.height);
  const Turn turn = turn_of(photo.orientation);
  const bool lies = turn.quarters % 2 == 1;
  const double whole_width = lies ? photo.height : photo.width,
               whole_height = lies ? photo.width : photo.height;
  const PixelArea area =
      stored_area({static_cast<double>(crop.x), static_cast<double>(crop.y),
                   static_cast<double>(crop.width), static_cast<double>(crop.height)},
                  photo.width, photo.height, turn);
  if (lies) std::swap(width, height);
  // Of the whole picture, what gives the crop its pixels.
  const auto least = [](double whole, double wanted, double part) {
    return static_cast<std::uint32_t>(std::min(std::ceil(wanted * whole / part), whole));
  };
  try {
    const auto decoded =
        decode(photo.kind, photo.bytes,
               {least(whole_width, width, area.width), least(whole_height, height, area.height)});
    const auto* const pixels = std::get_if<Pixels>(&decoded);
    if (pixels == nullptr) return std::nullopt;
    const double x = pixels->width / whole_width, y = pixels->height / whole_height;
    const PixelArea part{area.x * x, area.y * y, area.width * x, area.height * y};
    const Pixels upright = turned(resampled(*pixels, part, width, height), turn);
    // Fine enough that nothing is seen at arm's length; coarser only where the photo is so restless
    // that four of them would not go with a letter of 1.5 MB.
    constexpr std::size_t most_bytes = 340'000;
    std::optional<std::string> jpeg;
    for (const int quality : {86, 78, 70, 60, 50, 40}) {
      jpeg = encode_jpeg(upright, quality);
      if (!jpeg || jpeg->size() <= most_bytes) break;
    }
    if (!jpeg) return std::nullopt;
    return ReducedPhoto{std::move(*jpeg), upright.width, upright.height};
  } catch (const std::bad_alloc&) {
    return std::nullopt;
  }
}
}  // namespace furnish
