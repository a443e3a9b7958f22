#pragma once

#include <map>
#include <string>
#include <tuple>

#include "output/cairo_handle.h"
#include "page/frame.h"

namespace furnish {

/// The photos of a page as cairo takes them, each made once however often it stands there.
class PhotoMarks {
 public:
  /// `keeps_files`: the page becomes a file that embeds a JPEG as it is; else its pixels are drawn.
  explicit PhotoMarks(bool keeps_files) : keeps_files_(keeps_files) {}

  /// Fills the mark's area. A photo that cannot be decoded leaves `cr` in error.
  void draw(const ImageMark&, cairo_t* cr);

 private:
  using Key = std::tuple<const Photograph*, std::uint32_t, std::uint32_t, std::uint32_t,
                         std::uint32_t, std::uint32_t, std::uint32_t>;
  cairo_surface_t* surface(const ImageMark&);

  bool keeps_files_;
  std::map<Key, CairoSurface> made_;
};
}  // namespace furnish
