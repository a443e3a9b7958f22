#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>

namespace furnish {

/// What a message pattern asks for at one of its places.
enum class PlaceKind : std::uint8_t {
  plain,    ///< "{0}": a text or a number
  number,   ///< "{0, number}"
  counted,  ///< "{0, plural, …}"
};

/// The places of an ICU message pattern by their numbers, or why ICU refuses it.
struct PatternPlaces {
  std::map<int, PlaceKind> places;
  std::string fault;  ///< in words for the file's author; empty: all is well
};

/// Places are numbered. Of ICU's forms only those of PlaceKind are taken.
PatternPlaces read_pattern(std::string_view pattern);
/// "{0} and {2}"; "no places".
std::string to_text(const std::map<int, PlaceKind>&);
}  // namespace furnish
