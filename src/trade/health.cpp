#include "trade/health.h"

#include <algorithm>
#include <array>

#include "base/text.h"

namespace furnish {
namespace {
constexpr std::array<std::string_view, 9> words{"seizures", "heart disease", "thin skin",
                                                "wrinkles", "arthritis",     "blind",
                                                "deaf",     "diabetes",      "collapsing trachea"};
static_assert(words.size() == static_cast<std::size_t>(Condition::collapsing_trachea) + 1);
}  // namespace

std::optional<Condition> parse_condition(std::string_view written) {
  const auto* const found = std::ranges::find(words, lower_ascii(trimmed(written)));
  if (found == words.end()) return std::nullopt;
  return static_cast<Condition>(found - words.begin());
}
std::string_view to_text(Condition condition) {
  return words[static_cast<std::size_t>(condition)];
}
std::span<const std::string_view> condition_words() {
  return words;
}
}  // namespace furnish
