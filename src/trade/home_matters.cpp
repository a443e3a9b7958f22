#include "trade/home_matters.h"

#include <algorithm>
#include <array>

#include "trade/phrases.h"

namespace furnish {
namespace {
struct Row {
  std::string_view phrase;
  HomeMatter matter;
};
constexpr std::array<std::string_view, home_matter_count> texts{
    "biting", "seizures", "medicine", "an illness", "a wound or a lump", "parasites"};

constexpr std::array table{
    Row{"bite", HomeMatter::biting},         Row{"biting", HomeMatter::biting},
    Row{"bitten", HomeMatter::biting},       Row{"snap", HomeMatter::biting},
    Row{"snapped", HomeMatter::biting},      Row{"nip", HomeMatter::biting},
    Row{"nipped", HomeMatter::biting},       Row{"seizure", HomeMatter::seizures},
    Row{"epilepsy", HomeMatter::seizures},   Row{"epileptic", HomeMatter::seizures},
    Row{"convulsion", HomeMatter::seizures}, Row{"medicine", HomeMatter::medicine},
    Row{"medication", HomeMatter::medicine}, Row{"tablet", HomeMatter::medicine},
    Row{"insulin", HomeMatter::medicine},    Row{"ointment", HomeMatter::medicine},
    Row{"eye drop", HomeMatter::medicine},   Row{"ear drop", HomeMatter::medicine},
    Row{"diabetes", HomeMatter::illness},    Row{"diabetic", HomeMatter::illness},
    Row{"collapse", HomeMatter::illness},    Row{"collapsed", HomeMatter::illness},
    Row{"faint", HomeMatter::illness},       Row{"fainted", HomeMatter::illness},
    Row{"limping", HomeMatter::illness},     Row{"lump", HomeMatter::wounds},
    Row{"wound", HomeMatter::wounds},        Row{"sore", HomeMatter::wounds},
    Row{"rash", HomeMatter::wounds},         Row{"swelling", HomeMatter::wounds},
    Row{"swollen", HomeMatter::wounds},      Row{"bleeding", HomeMatter::wounds},
    Row{"discharge", HomeMatter::wounds},    Row{"infection", HomeMatter::wounds},
    Row{"infected", HomeMatter::wounds},     Row{"flea", HomeMatter::parasites},
    Row{"tick", HomeMatter::parasites},
};

PhraseList phrases_of_table() {
  std::array<std::string_view, table.size()> phrases;
  std::ranges::transform(table, phrases.begin(), &Row::phrase);
  return PhraseList(phrases);
}
}  // namespace

std::string_view to_text(HomeMatter matter) {
  return texts[static_cast<std::size_t>(matter)];
}

std::optional<HomeMatter> home_matter(std::string_view words) {
  static const PhraseList phrases = phrases_of_table();
  const auto found = phrases.first_affirmed(words);
  return found ? std::optional(table.at(*found).matter) : std::nullopt;
}
}  // namespace furnish
