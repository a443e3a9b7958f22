#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>

namespace furnish {

/// Every text of ours that a sheet may print, listed in phrases.def; what the salon wrote itself
/// stays as written.
enum class Phrase : std::uint16_t {
#define PHRASE(name) name,
#include "sheet/phrases.def"
#undef PHRASE
  count_
};
inline constexpr auto phrase_count = static_cast<std::size_t>(Phrase::count_);

/// The key of a phrase under [sheet] in a catalogue: "age-years".
std::string_view key_of(Phrase);
}  // namespace furnish
