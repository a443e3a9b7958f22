#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

#include "trade/method.h"
#include "trade/region.h"

namespace furnish {

/// What `[finish]` may say how it ends; the trade has words of its own for all but the extras.
enum class FinishPart : std::uint8_t { ears, tail, feet, nails, extras };
inline constexpr std::size_t finish_part_count = 5;
std::string_view key(FinishPart);  ///< as written in files: "ears"
/// What is finished on a region: its ears, tail or feet; of other regions nothing.
std::optional<FinishPart> finish_part(Region);

/// How a tail is shaped at its end, as far as a drawing tells: by the trade's words or by "ball"
/// among free ones.
enum class TailEnd : std::uint8_t { natural, ball, carrot, flag };
TailEnd tail_end(std::string_view written);

/// A finish that the trade has a word for, and how it is made. Files may use free words instead.
struct FinishInfo {
  FinishPart part;
  std::string_view words;
  Method how;
};

std::span<const FinishInfo> finishes();
/// The finish whose words stand at the start of `written` ("plume, tip tidied"); null for free
/// words.
const FinishInfo* find_finish(FinishPart, std::string_view written);
}  // namespace furnish
