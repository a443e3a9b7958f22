#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "trade/region.h"

namespace furnish {

/// What else a region is called at the table and by owners. Common practice, no source: the words
/// of English-speaking salons, without those that mean two places ("front", "flank").
std::span<const std::string_view> synonyms(Region);

/// "bum", "left paw", "hind legs" as the place that is meant. Empty if it is no such word, or
/// where parse_place() takes it as it is, or for a side of what has none.
std::optional<Place> parse_synonym(std::string_view words, AnySide = AnySide::no);

/// Words that mean several regions: "face" is muzzle and cheeks, as in a clean face; common
/// practice, no source. Empty if it is none.
std::span<const Region> several_meant(std::string_view word);
}  // namespace furnish
