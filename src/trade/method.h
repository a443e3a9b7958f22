#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

#include "trade/region.h"

namespace furnish {

/// How a part of the work is done: the line a newer groomer needs.
enum class Method : std::uint8_t {
  before_bath,
  conditioner_double,
  rinse,
  damp_brush_out,
  nails,
  pads,
  feet,
  sanitary,
  breeches,
  tail,
  belly_and_chest,
  ears_straight,
  anywhere,
  look,
};
inline constexpr std::size_t method_count = 14;
/// In a catalogue of words: "before-bath". Total over Method.
std::string_view key(Method);
/// Common practice, no source. Total over Method.
std::string_view how(Method);
/// The method of a region that has one of its own.
std::optional<Method> method_of(Region);
}  // namespace furnish
