#pragma once

#include <array>
#include <optional>
#include <span>
#include <string_view>

#include "model/pet.h"
#include "model/visit.h"

namespace furnish {

class Words;

// What a salon's people wrote, by the words of its language that a catalogue lists for that. A word
// with a star stands for all that begin so; what stands beside one may take it back ("never
// bites"). The desk's page asks the same of the same lists (desk/page/alert_offer.js).

/// That the pet bit, or tried to.
bool tells_of_bite(std::string_view text, const Words&);
/// A visit and the first of its texts, on behaviour, why it was not done, or a finding, that tells
/// of a bite.
struct ToldBite {
  const Visit& visit;
  const FreeText& text;
};
/// The newest up to `until`; empty if none tells of one, or an alert of the pet does.
std::optional<ToldBite> untold_bite(const Pet&, std::span<const Visit>, const Words&, Date until);
/// Something that a vet should see: a cough, a wound, a pet too hot.
bool asks_for_vet(std::string_view text, const Words&);

/// Their keys under [desk] of a catalogue.
constexpr std::array<std::string_view, 4> told_word_keys() {
  return {"bite-words", "bite-not", "vet-words", "vet-not"};
}
}  // namespace furnish
