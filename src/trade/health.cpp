#include "trade/health.h"

#include <algorithm>
#include <array>

#include "base/text.h"

namespace furnish {
namespace {
constexpr std::array<std::string_view, 9> words{"seizures", "heart disease", "thin skin",
                                                "wrinkles", "arthritis",     "blind",
                                                "deaf",     "diabetes",      "collapsing trachea"};
/// What people call the same; common practice, no source.
struct Synonym {
  std::string_view word;
  Condition condition;
};
constexpr std::array synonyms{
    Synonym{"seizure", Condition::seizures},
    Synonym{"fits", Condition::seizures},
    Synonym{"epilepsy", Condition::seizures},
    Synonym{"epileptic", Condition::seizures},
    Synonym{"heart", Condition::heart_disease},
    Synonym{"heart murmur", Condition::heart_disease},
    Synonym{"heart condition", Condition::heart_disease},
    Synonym{"heart failure", Condition::heart_disease},
    Synonym{"wrinkly", Condition::wrinkles},
    Synonym{"arthritic", Condition::arthritis},
    Synonym{"blindness", Condition::blind},
    Synonym{"deafness", Condition::deaf},
    Synonym{"diabetic", Condition::diabetes},
    Synonym{"collapsed trachea", Condition::collapsing_trachea},
    Synonym{"tracheal collapse", Condition::collapsing_trachea},
};
static_assert(words.size() == static_cast<std::size_t>(Condition::collapsing_trachea) + 1);
}  // namespace

std::optional<Condition> parse_condition(std::string_view written) {
  const auto* const found = std::ranges::find(words, lower_ascii(trimmed(written)));
  if (found != words.end()) return static_cast<Condition>(found - words.begin());
  const auto* const other =
      std::ranges::find(synonyms, lower_ascii(trimmed(written)), &Synonym::word);
  return other == synonyms.end() ? std::nullopt : std::optional(other->condition);
}
std::string_view to_text(Condition condition) {
  return words[static_cast<std::size_t>(condition)];
}
std::span<const std::string_view> condition_words() {
  return words;
}
}  // namespace furnish
