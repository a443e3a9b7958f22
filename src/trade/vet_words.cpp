#include "trade/vet_words.h"

#include <algorithm>
#include <array>

#include "trade/phrases.h"

namespace furnish {
namespace {
struct Row {
  std::string_view phrase;
  VetTask task;
};
constexpr std::array<std::string_view, vet_task_count> keys{
    "anal-sacs", "ear-treatment", "teeth-below-the-gum", "cutting-mats-off-the-skin", "medication"};

constexpr std::array table{
    Row{"anal sac", VetTask::anal_sacs},
    Row{"anal gland", VetTask::anal_sacs},
    Row{"express gland", VetTask::anal_sacs},
    Row{"ear treatment", VetTask::ear_treatment},
    Row{"ear drop", VetTask::ear_treatment},
    Row{"ear medication", VetTask::ear_treatment},
    Row{"flush ear", VetTask::ear_treatment},
    Row{"ear flush", VetTask::ear_treatment},
    Row{"scale teeth", VetTask::teeth},
    Row{"teeth scaling", VetTask::teeth},
    Row{"scaling", VetTask::teeth},
    Row{"scaler", VetTask::teeth},
    Row{"below the gum", VetTask::teeth},
    Row{"cut mat", VetTask::mats_off},
    Row{"cut out mat", VetTask::mats_off},
    Row{"cut off mat", VetTask::mats_off},
    Row{"cutting out mat", VetTask::mats_off},
    Row{"cutting mat", VetTask::mats_off},
    Row{"medication", VetTask::medication},
    Row{"medicine", VetTask::medication},
    Row{"sedate", VetTask::medication},
    Row{"sedation", VetTask::medication},
    Row{"sedative", VetTask::medication},
    Row{"tablet", VetTask::medication},
    Row{"ointment", VetTask::medication},
    Row{"injection", VetTask::medication},
};

PhraseList phrases_of_table() {
  std::array<std::string_view, table.size()> phrases;
  std::ranges::transform(table, phrases.begin(), &Row::phrase);
  return PhraseList(phrases);
}
}  // namespace

std::string_view key(VetTask task) {
  return keys[static_cast<std::size_t>(task)];
}

std::optional<VetTask> veterinary_task(std::string_view words) {
  static const PhraseList phrases = phrases_of_table();
  const auto found = phrases.first_affirmed(words);
  return found ? std::optional(table.at(*found).task) : std::nullopt;
}
}  // namespace furnish
