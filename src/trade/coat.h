#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

#include "base/length.h"
#include "trade/region.h"

namespace furnish {

enum class Coat : std::uint8_t { double_coat, curly, drop, silky, wire, smooth, hairless };
inline constexpr std::size_t coat_count = 7;

/// Micrometres a day, both ends. Always a range; a pet's own measurements replace it.
struct GrowthRate {
  int low, high;
};

struct CoatInfo {
  Coat coat;
  std::string_view key;        ///< as written in files: "double"
  GrowthRate growth;           ///< sources stand beside the numbers, in coat.cpp
  bool keeps_growing;          ///< else it stops at its natural length
  Length natural;              ///< on the back, left alone; common practice, no source
  std::optional<Length> mats;  ///< above this it mats quickly; common practice, no source
  bool brush_before_water;     ///< loose or long coat blocks water and shampoo
  int weeks_low, weeks_high;   ///< usual interval of visits; common practice, no source
  double mix;  ///< litres of diluted shampoo a square metre; common practice, no source
};

/// Total over Coat.
const CoatInfo& info(Coat);
std::span<const CoatInfo> coats();
std::optional<Coat> parse_coat(std::string_view);
std::string_view key(Coat);
std::span<const std::string_view> coat_words();

/// How long the coat of a region is when nobody cuts it: the coat's natural length times the
/// region's share, to a whole millimetre; a wire coat's furnishings have lengths of their own.
/// Common practice, no source.
Length natural_length(Coat, Region);
}  // namespace furnish
