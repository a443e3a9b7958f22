#include "output/photo.h"

#include <variant>

#include "fuzz/targets.h"
#include "output/photo_exif.h"
#include "output/photo_formats.h"

namespace furnish::fuzz {
namespace {
bool small(const std::variant<PhotoHeader, PhotoFault>& found) {
  constexpr std::uint32_t most = 64;
  const auto* const header = std::get_if<PhotoHeader>(&found);
  return header != nullptr && header->width <= most && header->height <= most;
}
}  // namespace

void photo(std::string_view bytes) {
  hold(exif_orientation(bytes) >= 1 && exif_orientation(bytes) <= 8, "one of eight ways to stand");
  const auto jpeg = jpeg_header(bytes), png = png_header(bytes), webp = webp_header(bytes);
  const bool few = (small(jpeg) || std::holds_alternative<PhotoFault>(jpeg)) &&
                   (small(png) || std::holds_alternative<PhotoFault>(png)) &&
                   (small(webp) || std::holds_alternative<PhotoFault>(webp));
  if (!few) return;
  DiagnosticSink sink;
  const auto one = open_photograph("photo", std::string(bytes), {}, sink);
  hold(one.has_value() == sink.all().empty(), "a photo, or a warning");
}
}  // namespace furnish::fuzz
