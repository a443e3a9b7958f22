#include "output/png.h"

#include <fmt/format.h>
#include <zlib.h>

#include <cmath>
#include <cstdint>

#include "base/text.h"
#include "output/cairo_handle.h"
#include "output/check_page.h"
#include "output/painter.h"

namespace furnish {
namespace {
constexpr int least_dpi = 10, most_dpi = 1200;
constexpr double most_pixels = 200e6;

std::string big_endian(std::uint32_t n) {
  return {static_cast<char>(n >> 24 & 0xFF), static_cast<char>(n >> 16 & 0xFF),
          static_cast<char>(n >> 8 & 0xFF), static_cast<char>(n & 0xFF)};
}

/// A chunk of a PNG file: length, kind, data, check sum over the last two (PNG, ISO 15948, 5.3).
std::string chunk(std::string_view kind, std::string_view data) {
  const std::string body = std::string(kind) + std::string(data);
  const auto sum =
      ::crc32(0, reinterpret_cast<const Bytef*>(body.data()), static_cast<uInt>(body.size()));
  return big_endian(static_cast<std::uint32_t>(data.size())) + body +
         big_endian(static_cast<std::uint32_t>(sum));
}

std::string resolution(int dpi) {
  const auto per_metre = static_cast<std::uint32_t>(std::lround(dpi / 0.0254));
  return chunk("pHYs", big_endian(per_metre) + big_endian(per_metre) + '\1');
}

/// iTXt: keyword, not compressed, language, no translated keyword, UTF-8.
std::string text(std::string_view keyword, const std::string& value, const std::string& language) {
  if (value.empty() || first_bad_utf8(value)) return {};
  std::string data(keyword);
  data.append(3, '\0');
  data += language;
  data.append(2, '\0');
  return chunk("iTXt", data + value);
}

CairoSurface white_picture(int width, int height) {
  CairoSurface surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24, width, height));
  const CairoContext context(cairo_create(surface.get()));
  cairo_set_source_rgb(context.get(), 1, 1, 1);
  cairo_paint(context.get());
  return surface;
}

cairo_status_t paint_scaled(const Frame& page, cairo_surface_t* surface, double scale) {
  const CairoContext context(cairo_create(surface));
  cairo_scale(context.get(), scale, scale);
  paint(page, context.get());
  return cairo_status(context.get());
}
}  // namespace

std::optional<std::string> to_png(const Frame& page, const DocumentInfo& info, int dpi,
                                  DiagnosticSink& sink) {
  if (!check_page(page, sink)) return std::nullopt;
  const double scale = dpi / 72.0;
  const PageSize size = in_points(page.size);
  const double width = std::ceil(size.width * scale - 0.01);
  const double height = std::ceil(size.height * scale - 0.01);
  if (dpi < least_dpi || dpi > most_dpi || width * height > most_pixels) {
    sink.error("bad-picture", {},
               fmt::format("a picture of {} dpi and {:.0f} × {:.0f} pixels cannot be made", dpi,
                           width, height))
        .hint = fmt::format("use {} to {} dpi, and at most {:.0f} million pixels", least_dpi,
                            most_dpi, most_pixels / 1e6);
    return std::nullopt;
  }
  const CairoSurface surface = white_picture(static_cast<int>(width), static_cast<int>(height));
  std::string bytes;
  cairo_status_t status = paint_scaled(page, surface.get(), scale);
  if (status == CAIRO_STATUS_SUCCESS) {
    status = cairo_surface_write_to_png_stream(surface.get(), append_to_string, &bytes);
  }
  if (status != CAIRO_STATUS_SUCCESS) {
    sink.error("picture-failed", {},
               fmt::format("the picture could not be drawn: {}", cairo_status_to_string(status)));
    return std::nullopt;
  }
  constexpr std::size_t after_header = 8 + 25;  // signature and IHDR
  bytes.insert(after_header, resolution(dpi) + png_title(info));
  return bytes;
}

std::string png_title(const DocumentInfo& info) {
  return text("Title", info.title, info.language);
}
}  // namespace furnish
