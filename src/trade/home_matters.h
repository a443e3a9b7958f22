#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

namespace furnish {

/// What an owner should know at home, too, and not the salon alone; common practice, no source.
enum class HomeMatter : std::uint8_t { biting, seizures, medicine, illness, wounds, parasites };
inline constexpr std::size_t home_matter_count = 6;
/// For messages: "biting". Total over HomeMatter.
std::string_view to_text(HomeMatter);

/// The first such matter in free words, by plain English ones; empty if there is none, or the words
/// take it back ("never bites").
std::optional<HomeMatter> home_matter(std::string_view words);
}  // namespace furnish
