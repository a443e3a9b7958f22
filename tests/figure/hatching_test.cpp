#include "figure/hatching.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "figure/setting.h"

namespace furnish {
namespace {
/// Of a 30 mm patch printed in grey at 600 dpi: mean grey, and how grey changes across and down.
struct Look {
  double grey, across, down, diagonal;
};

Look look_of(ToolKind kind) {
  Frame frame;
  frame.size = {30_mm, 30_mm};
  frame.marks.emplace_back(hatched({rectangle_contour({{}, frame.size})}, kind));
  const Raster raster = rasterised(frame, 600);
  Look out{};
  const int margin = 12;
  double count = 0;
  for (int y = margin; y < raster.height - margin; ++y) {
    for (int x = margin; x < raster.width - margin; ++x) {
      const double here = raster.at(x, y);
      out.grey += here;
      out.across += std::abs(here - raster.at(x + 4, y));
      out.down += std::abs(here - raster.at(x, y + 4));
      // Along a line that falls to the right nothing changes in this direction.
      out.diagonal +=
          std::abs(here - raster.at(x + 4, y + 4)) - std::abs(here - raster.at(x + 4, y - 4));
      ++count;
    }
  }
  return {out.grey / count, out.across / count, out.down / count, out.diagonal / count};
}
}  // namespace

TEST_CASE("printed in grey, every kind of tool is told from every other", "[figure][hatching]") {
  for (std::size_t i = 0; i < tool_kind_count; ++i) {
    for (std::size_t j = i + 1; j < tool_kind_count; ++j) {
      const Look a = look_of(static_cast<ToolKind>(i)), b = look_of(static_cast<ToolKind>(j));
      INFO("kinds " << i << " and " << j);
      const bool greys = std::abs(a.grey - b.grey) > 4;
      const bool directions = std::abs((a.across - a.down) - (b.across - b.down)) > 5 ||
                              std::abs(a.diagonal - b.diagonal) > 5;
      CHECK((greys || directions));
    }
  }
}

TEST_CASE("hatching stays light enough to read the figure through", "[figure][hatching]") {
  for (std::size_t i = 0; i < tool_kind_count; ++i) {
    const Look look = look_of(static_cast<ToolKind>(i));
    INFO("kind " << i);
    CHECK(look.grey > 225);
    CHECK(look.grey < 254.5);
  }
}

TEST_CASE("tools fall into kinds as they cut", "[figure][hatching]") {
  CHECK(kind_of(Brush{}) == ToolKind::brush);
  CHECK(kind_of(Clip{find_blade("10")}) == ToolKind::blade);
  CHECK(kind_of(CombOver{13_mm, find_blade("30")}) == ToolKind::comb);
  CHECK(kind_of(Scissor{Shears::curved}) == ToolKind::straight);
  CHECK(kind_of(Scissor{Shears::blending}) == ToolKind::thinning);
  CHECK(kind_of(HandStrip{Strip::knife}) == ToolKind::strip);
}

}  // namespace furnish
