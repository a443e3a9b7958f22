#pragma once

#include <memory>

#include "page/block.h"

namespace furnish {

/// The bundled fonts and a page read in the hand: what blocks of the figure are set with.
class HandHeld {
 public:
  HandHeld();
  const Setting& setting() const { return *setting_; }

 private:
  DiagnosticSink sink_;
  std::unique_ptr<FontSet> fonts_;
  std::unique_ptr<TextShaper> shaper_;
  std::unique_ptr<Setting> setting_;
};

/// Grey values of a frame, 0 black to 255 white, at a resolution; by rows.
struct Raster {
  int width = 0, height = 0;
  std::vector<unsigned char> grey;
  unsigned char at(int x, int y) const {
    return grey[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                static_cast<std::size_t>(x)];
  }
};
Raster rasterised(const Frame&, double dpi);
/// A portable grey map of the raster, in a new file; the path of it.
std::string written(const Raster&, const std::string& name);
}  // namespace furnish
