#include "output/pixels.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace furnish {
namespace {
constexpr int unit_bits = 14;
constexpr int unit = 1 << unit_bits;

/// Catmull and Rom's cubic, as Keys has it for a = -1/2 (IEEE Trans. ASSP 29, 1981, p. 1153):
/// sharp, and exact where nothing changes.
double cubic(double x) {
  x = std::abs(x);
  if (x < 1) return (1.5 * x - 2.5) * x * x + 1;
  if (x < 2) return ((-0.5 * x + 2.5) * x - 4) * x + 2;
  return 0;
}

/// What one pixel is made of: neighbours from `first`, with weights that add up to `unit`.
struct Taps {
  std::uint32_t first;
  std::vector<int> weights;
};

std::vector<Taps> taps_for(std::uint32_t from, double begin, double length, std::uint32_t to) {
  const double step = length / to, widened = std::max(step, 1.0);
  std::vector<Taps> all(to);
  for (std::uint32_t i = 0; i < to; ++i) {
    const double centre = begin + (i + 0.5) * step - 0.5;
    const auto low = static_cast<std::int64_t>(std::ceil(centre - 2 * widened));
    const auto high = static_cast<std::int64_t>(std::floor(centre + 2 * widened));
    const auto last = static_cast<std::int64_t>(from) - 1;
    Taps& taps = all[i];
    taps.first = static_cast<std::uint32_t>(std::clamp<std::int64_t>(low, 0, last));
    std::vector<double> weights(
        static_cast<std::size_t>(std::clamp<std::int64_t>(high, 0, last) - taps.first + 1));
    double sum = 0;
    for (std::int64_t at = low; at <= high; ++at) {
      // Beyond the edge the outermost pixel goes on.
      const auto index =
          static_cast<std::size_t>(std::clamp<std::int64_t>(at, 0, last) - taps.first);
      const double weight = cubic((static_cast<double>(at) - centre) / widened);
      weights[index] += weight;
      sum += weight;
    }
    int total = 0;
    for (const double weight : weights) {
      taps.weights.push_back(static_cast<int>(std::lround(weight / sum * unit)));
      total += taps.weights.back();
    }
    *std::ranges::max_element(taps.weights) += unit - total;
  }
  return all;
}

std::uint8_t rounded(int sum) {
  return static_cast<std::uint8_t>(std::clamp((sum + unit / 2) >> unit_bits, 0, 255));
}
/// The sums of a pixel stay in registers where it is known how many there are.
template <std::uint32_t channels>
void narrowed_row(const std::uint8_t* source, const std::vector<Taps>& across, std::uint8_t* out) {
  for (const Taps& taps : across) {
    const std::uint8_t* pixel = source + std::size_t{taps.first} * channels;
    std::array<int, channels> sum{};
    for (const int weight : taps.weights) {
      for (int& one : sum) one += weight * *pixel++;
    }
    for (const int one : sum) *out++ = rounded(one);
  }
}
}  // namespace

Pixels on_white(const std::vector<std::uint8_t>& rgba, std::uint32_t width, std::uint32_t height) {
  Pixels out(width, height, 3);
  for (std::size_t from = 0, to = 0; from < rgba.size(); from += 4, to += 3) {
    const unsigned opacity = rgba[from + 3];
    for (std::size_t c = 0; c < 3; ++c) {
      const unsigned mixed = rgba[from + c] * opacity + 255 * (255 - opacity);
      out.data[to + c] = static_cast<std::uint8_t>((mixed + 127) / 255);
    }
  }
  return out;
}

Pixels resampled(const Pixels& from, const PixelArea& area, std::uint32_t width,
                 std::uint32_t height) {
  const std::vector<Taps> across = taps_for(from.width, area.x, area.width, width),
                          down = taps_for(from.height, area.y, area.height, height);
  const std::uint32_t channels = from.channels, first_row = down.front().first;
  const auto rows =
      static_cast<std::uint32_t>(down.back().first + down.back().weights.size()) - first_row;
  Pixels narrow(width, rows, channels);
  for (std::uint32_t y = 0; y < rows; ++y) {
    const auto narrowed = channels == 1 ? narrowed_row<1> : narrowed_row<3>;
    narrowed(from.row(first_row + y), across, narrow.row(y));
  }
  Pixels result(width, height, channels);
  std::vector<int> sums(narrow.stride());
  for (std::uint32_t y = 0; y < height; ++y) {
    std::ranges::fill(sums, 0);
    std::uint32_t source_row = down[y].first - first_row;
    for (const int weight : down[y].weights) {
      const std::uint8_t* const source = narrow.row(source_row++);
      for (std::size_t i = 0; i < sums.size(); ++i) sums[i] += weight * source[i];
    }
    std::ranges::transform(sums, result.row(y), rounded);
  }
  return result;
}

Turn turn_of(int orientation) {
  // Exif 2.3, tag 274, says which edges the first row and the first column are: 6, for one, has
  // its first row at the right.
  constexpr std::array<Turn, 8> table{
      {{false, 0}, {true, 0}, {false, 2}, {true, 2}, {true, 3}, {false, 1}, {true, 1}, {false, 3}}};
  return table[static_cast<std::size_t>(std::clamp(orientation, 1, 8) - 1)];
}

Pixels turned(Pixels from, Turn turn) {
  if (!turn.mirrored && turn.quarters == 0) return from;
  const bool lies = turn.quarters % 2 == 1;
  Pixels out(lies ? from.height : from.width, lies ? from.width : from.height, from.channels);
  for (std::uint32_t y = 0; y < from.height; ++y) {
    const std::uint8_t* pixel = from.row(y);
    for (std::uint32_t x = 0; x < from.width; ++x, pixel += from.channels) {
      std::uint32_t to_x = turn.mirrored ? from.width - 1 - x : x, to_y = y;
      const std::uint32_t right = from.width - 1, bottom = from.height - 1;
      if (turn.quarters == 1) {
        const std::uint32_t old = to_x;
        to_x = bottom - to_y;
        to_y = old;
      } else if (turn.quarters == 2) {
        to_x = right - to_x;
        to_y = bottom - to_y;
      } else if (turn.quarters == 3) {
        const std::uint32_t old = to_x;
        to_x = to_y;
        to_y = right - old;
      }
      std::copy_n(pixel, from.channels, out.row(to_y) + std::size_t{to_x} * from.channels);
    }
  }
  return out;
}

PixelArea stored_area(const PixelArea& upright, double width, double height, Turn turn) {
  PixelArea area = upright;
  // Back by the same quarters, anticlockwise: what was the right edge becomes the top.
  for (int i = 0; i < turn.quarters; ++i) {
    area = {area.y, width - area.x - area.width, area.height, area.width};
    std::swap(width, height);
  }
  if (turn.mirrored) area.x = width - area.x - area.width;
  return area;
}
}  // namespace furnish
