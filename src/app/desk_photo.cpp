#include "app/desk_photo.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "output/make_folder.h"
#include "output/photo.h"
#include "output/write.h"

namespace furnish {
namespace {
/// The longer side, in pixels: 200 mm of paper at photo_dpi.
constexpr std::uint32_t largest_side = 2400;
constexpr int most_photos = 999;
}  // namespace

desk::PhotoMade store_photo(DeskShop& kept, std::string_view visit, std::string bytes) {
  DiagnosticSink said;
  const auto photo = open_photograph("the photo", std::move(bytes), {}, said);
  if (!photo) return {{}, said.all().back().message};
  const double share =
      std::min(1.0, static_cast<double>(largest_side) / std::max(photo->width, photo->height));
  const auto pixels = [&](std::uint32_t side) {
    return std::max(1U, static_cast<std::uint32_t>(std::lround(side * share)));
  };
  const auto small = reduced(*photo, {0, 0, photo->width, photo->height}, pixels(photo->width),
                             pixels(photo->height));
  if (!small) return {{}, "the photo cannot be decoded"};
  const std::string folder = path_in(kept.root(), "photos");
  if (!make_folder(folder, said, kept.disk())) return {{}, said.all().back().message};
  std::string stem(visit);
  std::ranges::replace(stem, '/', '-');
  for (int n = 1; n <= most_photos; ++n) {
    const std::string name = fmt::format("{}-{}.jpg", stem, n);
    DiagnosticSink fault;
    if (write_new(path_in(folder, name), small->jpeg, fault, kept.disk())) {
      return {"photos/" + name, {}};
    }
    if (fault.all().back().code != "exists") return {{}, fault.all().back().message};
  }
  return {{}, "the visit has as many photos as can be named"};
}
}  // namespace furnish
