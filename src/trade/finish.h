#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

namespace furnish {

enum class FinishPart : std::uint8_t { ears, tail, feet, nails };

/// A finish that the trade has a word for, and how it is made. Files may use free words instead.
struct FinishInfo {
  FinishPart part;
  std::string_view words;
  std::string_view how;  ///< the line a newer groomer needs; common practice, no source
};

std::span<const FinishInfo> finishes();
/// The finish whose words stand at the start of `written` ("plume, tip tidied"); null for free
/// words.
const FinishInfo* find_finish(FinishPart, std::string_view written);
}  // namespace furnish
