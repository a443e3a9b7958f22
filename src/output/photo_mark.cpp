#include "output/photo_mark.h"

#include <cmath>
#include <memory>
#include <variant>

#include "output/photo.h"
#include "output/photo_formats.h"

namespace furnish {
namespace {
std::uint32_t pixels_along(Length side) {
  return static_cast<std::uint32_t>(std::lround(side.in_inches() * photo_dpi));
}

/// A surface whose only use is its error, which a context takes over.
CairoSurface unreadable() {
  const auto refuse = [](void*, unsigned char*, unsigned) { return CAIRO_STATUS_READ_ERROR; };
  return CairoSurface(cairo_image_surface_create_from_png_stream(refuse, nullptr));
}

void attach_file(cairo_surface_t* surface, std::string jpeg) {
  auto owned = std::make_unique<std::string>(std::move(jpeg));
  const auto* data = reinterpret_cast<const unsigned char*>(owned->data());
  const unsigned long size = owned->size();
  const auto status = cairo_surface_set_mime_data(
      surface, CAIRO_MIME_TYPE_JPEG, data, size,
      [](void* text) { delete static_cast<std::string*>(text); }, owned.get());
  if (status == CAIRO_STATUS_SUCCESS) owned.release();
}

void copy_pixels(const Pixels& from, cairo_surface_t* surface) {
  unsigned char* const data = cairo_image_surface_get_data(surface);
  const auto stride = static_cast<std::size_t>(cairo_image_surface_get_stride(surface));
  for (std::uint32_t y = 0; y < from.height; ++y) {
    const std::uint8_t* pixel = from.row(y);
    auto* out = reinterpret_cast<std::uint32_t*>(data + stride * y);
    for (std::uint32_t x = 0; x < from.width; ++x, pixel += from.channels) {
      const std::uint32_t red = pixel[0], green = pixel[from.channels / 2],
                          blue = pixel[from.channels - 1];
      *out++ = red << 16 | green << 8 | blue;
    }
  }
  cairo_surface_mark_dirty(surface);
}
}  // namespace

cairo_surface_t* PhotoMarks::surface(const ImageMark& mark) {
  const std::uint32_t width = pixels_along(mark.area.size.width),
                      height = pixels_along(mark.area.size.height);
  CairoSurface& made = made_[{mark.photo.get(), mark.crop.x, mark.crop.y, mark.crop.width,
                              mark.crop.height, width, height}];
  if (made) return made.get();
  auto photo = reduced(*mark.photo, mark.crop, width, height);
  if (!photo) return (made = unreadable()).get();
  made.reset(cairo_image_surface_create(CAIRO_FORMAT_RGB24, static_cast<int>(photo->width),
                                        static_cast<int>(photo->height)));
  if (cairo_surface_status(made.get()) != CAIRO_STATUS_SUCCESS) return made.get();
  if (keeps_files_) {
    attach_file(made.get(), std::move(photo->jpeg));
  } else {
    const auto pixels = decode_jpeg(photo->jpeg, {photo->width, photo->height});
    if (const auto* whole = std::get_if<Pixels>(&pixels)) copy_pixels(*whole, made.get());
  }
  return made.get();
}

void PhotoMarks::draw(const ImageMark& mark, cairo_t* cr) {
  cairo_surface_t* const photo = surface(mark);
  cairo_save(cr);
  const double width = mark.area.size.width.in_points(), height = mark.area.size.height.in_points();
  cairo_translate(cr, mark.area.left().in_points(), mark.area.top().in_points());
  cairo_rectangle(cr, 0, 0, width, height);
  cairo_clip(cr);
  if (cairo_surface_status(photo) == CAIRO_STATUS_SUCCESS) {
    cairo_scale(cr, width / cairo_image_surface_get_width(photo),
                height / cairo_image_surface_get_height(photo));
  }
  cairo_set_source_surface(cr, photo, 0, 0);
  // PDF/A forbids that a reader interpolates, which is what any other filter asks it for; pixels
  // are drawn smoothly, and up to the very edge.
  cairo_pattern_t* const source = cairo_get_source(cr);
  cairo_pattern_set_filter(source, keeps_files_ ? CAIRO_FILTER_FAST : CAIRO_FILTER_GOOD);
  if (!keeps_files_) cairo_pattern_set_extend(source, CAIRO_EXTEND_PAD);
  cairo_paint(cr);
  cairo_restore(cr);
}
}  // namespace furnish
