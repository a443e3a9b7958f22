#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace furnish {

/// What a short phrase is written for.
enum class StockKind : std::uint8_t {
  finding,    ///< what was found
  advice,     ///< what the owner should do about it; whatever could be an illness goes to a vet
  behaviour,  ///< how the pet took it
  helped,     ///< what made it easier
  reason,     ///< why it was not as planned
  not_done,   ///< why it was not groomed: for its owner, so kind, and nobody's fault
  state,      ///< how coat, skin, ears, eyes and nails came in
  left,       ///< how it left
  consent     ///< what was agreed to
};

struct StockPhrase {
  StockKind kind;
  std::string_view words;  ///< plain English, no full stop
};

/// The phrases that every shipped catalogue has in its own language under [stock], kind by kind,
/// the commonest of a kind first. Common practice, no source; none of them names an illness.
std::span<const StockPhrase> stock_phrases();
/// Its key in a catalogue: letters and digits, with hyphens between the words.
std::string stock_key(std::string_view words);
/// The phrase that a text is; a capital at its start, a full stop at its end and the shape of its
/// apostrophes do not matter. Null if there is none.
const StockPhrase* find_stock(std::string_view text);
/// The phrase that a text nearly is, for a hint: a few letters are other, or it begins or ends
/// otherwise. Empty if none is near.
std::optional<std::string_view> nearest_stock(std::string_view text);
/// True if two texts are the same but for a capital at the start, a full stop and apostrophes.
bool same_phrase(std::string_view, std::string_view);
}  // namespace furnish
