#include "figure/setting.h"

#include <cairo.h>

#include <array>
#include <filesystem>
#include <fstream>
#include <stdexcept>

#include "output/painter.h"

namespace furnish {

HandHeld::HandHeld() : fonts_(FontSet::open(FURNISH_SOURCE_DIR "/fonts", sink_)) {
  if (!fonts_) throw std::runtime_error("no fonts");
  shaper_ = std::make_unique<TextShaper>(*fonts_, sink_);
  const std::array roles{TypeRole{Role::body, 500_mm}, TypeRole{Role::label, 500_mm}};
  setting_ = std::make_unique<Setting>(
      Setting{TypeScale(roles, fonts_->capital_height(), 0, 10), 4_mm, *shaper_});
}

Raster rasterised(const Frame& frame, double dpi) {
  const auto pixels = [&](Length l) { return static_cast<int>(l.in_inches() * dpi + 0.5); };
  Raster out{pixels(frame.size.width), pixels(frame.size.height), {}};
  cairo_surface_t* surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, out.width, out.height);
  cairo_t* cr = cairo_create(surface);
  cairo_set_source_rgb(cr, 1, 1, 1);
  cairo_paint(cr);
  cairo_scale(cr, dpi / 72, dpi / 72);
  paint(frame, cr);
  const bool fine = cairo_status(cr) == CAIRO_STATUS_SUCCESS;
  cairo_destroy(cr);
  cairo_surface_flush(surface);
  const unsigned char* data = cairo_image_surface_get_data(surface);
  const int stride = cairo_image_surface_get_stride(surface);
  for (int y = 0; fine && y < out.height; ++y) {
    for (int x = 0; x < out.width; ++x) out.grey.push_back(data[y * stride + 4 * x + 1]);
  }
  cairo_surface_destroy(surface);
  if (!fine) throw std::runtime_error("painting failed");
  return out;
}

std::string written(const Raster& raster, const std::string& name) {
  const std::string path = (std::filesystem::temp_directory_path() / name).string();
  std::ofstream file(path, std::ios::binary);
  file << "P5\n" << raster.width << ' ' << raster.height << "\n255\n";
  file.write(reinterpret_cast<const char*>(raster.grey.data()),
             static_cast<std::streamsize>(raster.grey.size()));
  return path;
}
}  // namespace furnish
