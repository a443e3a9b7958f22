#pragma once

#include <array>
#include <string_view>

namespace furnish {

class Words;

// What a salon's people wrote, by the words of its language that a catalogue lists for that. A word
// with a star stands for all that begin so; what stands beside one may take it back ("never
// bites"). The desk's page asks the same of the same lists (desk/page/alert_offer.js).

/// That the pet bit, or tried to.
bool tells_of_bite(std::string_view text, const Words&);
/// Something that a vet should see: a cough, a wound, a pet too hot.
bool asks_for_vet(std::string_view text, const Words&);

/// Their keys under [desk] of a catalogue.
constexpr std::array<std::string_view, 4> told_word_keys() {
  return {"bite-words", "bite-not", "vet-words", "vet-not"};
}
}  // namespace furnish
