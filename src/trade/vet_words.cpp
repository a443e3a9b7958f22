#include "trade/vet_words.h"

#include <algorithm>
#include <array>

#include "trade/phrases.h"

namespace furnish {
namespace {
struct Row {
  std::string_view phrase, task;
};
constexpr std::array table{
    Row{"anal sac", "anal sacs"},
    Row{"anal gland", "anal sacs"},
    Row{"express gland", "anal sacs"},
    Row{"ear treatment", "ear treatment"},
    Row{"ear drop", "ear treatment"},
    Row{"ear medication", "ear treatment"},
    Row{"flush ear", "ear treatment"},
    Row{"ear flush", "ear treatment"},
    Row{"scale teeth", "teeth below the gum"},
    Row{"teeth scaling", "teeth below the gum"},
    Row{"scaling", "teeth below the gum"},
    Row{"scaler", "teeth below the gum"},
    Row{"below the gum", "teeth below the gum"},
    Row{"cut mat", "cutting mats off the skin"},
    Row{"cut out mat", "cutting mats off the skin"},
    Row{"cut off mat", "cutting mats off the skin"},
    Row{"cutting out mat", "cutting mats off the skin"},
    Row{"cutting mat", "cutting mats off the skin"},
    Row{"medication", "medication"},
    Row{"medicine", "medication"},
    Row{"sedate", "medication"},
    Row{"sedation", "medication"},
    Row{"sedative", "medication"},
    Row{"tablet", "medication"},
    Row{"ointment", "medication"},
    Row{"injection", "medication"},
};
}  // namespace

std::optional<std::string_view> veterinary_task(std::string_view words) {
  const auto* const found =
      std::ranges::find_if(table, [&](const Row& row) { return affirms(words, row.phrase); });
  if (found == table.end()) return std::nullopt;
  return found->task;
}
}  // namespace furnish
