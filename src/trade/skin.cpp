#include "trade/skin.h"

#include <algorithm>
#include <array>

#include "trade/phrases.h"

namespace furnish {
namespace {
constexpr std::array<std::string_view, 24> beginnings{
    "abscess", "bleed", "blister", "bruise", "cyst",   "graze", "growth", "hives",
    "lesion",  "lump",  "open",    "rash",   "raw",    "scab",  "sore",   "stitch",
    "suture",  "swell", "swollen", "tumor",  "tumour", "ulcer", "wart",   "wound"};
}  // namespace

bool keeps_tools_off(std::string_view finding) {
  const auto bad = [](const FreeWord& word) {
    return !word.denied && std::ranges::any_of(beginnings, [&](std::string_view begins) {
      return word.text.starts_with(begins);
    });
  };
  return affirms(finding, "hot spot") ||
         std::ranges::any_of(read_clauses(finding), [&](const Clause& clause) {
           return std::ranges::any_of(clause, bad);
         });
}
}  // namespace furnish
