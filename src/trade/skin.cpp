#include "trade/skin.h"

#include <algorithm>
#include <array>

#include "trade/phrases.h"

namespace furnish {
namespace {
constexpr std::array<std::string_view, 31> beginnings{
    "abscess", "bleed",  "blister", "bruise",  "bump",   "burn",    "crack",  "cyst",
    "graze",   "growth", "hives",   "lacerat", "lesion", "lump",    "nodul",  "open",
    "rash",    "raw",    "scab",    "sore",    "stitch", "sunburn", "suture", "swell",
    "swollen", "tumor",  "tumour",  "ulcer",   "wart",   "weal",    "wound"};
/// As a beginning they begin other words too: "massage", "push".
constexpr std::array<std::string_view, 6> whole_words{"mass",  "masses", "mole",
                                                      "moles", "pus",    "torn"};
}  // namespace

bool keeps_tools_off(std::string_view finding) {
  const auto bad = [](const FreeWord& word) {
    if (word.denied) return false;
    return std::ranges::find(whole_words, word.text) != whole_words.end() ||
           std::ranges::any_of(
               beginnings, [&](std::string_view begins) { return word.text.starts_with(begins); });
  };
  static const PhraseList phrases(std::array<std::string_view, 9>{
      "hot spot", "skin tag", "red skin", "reddened skin", "skin red", "skin is red",
      "skin reddened", "weeping skin", "skin weeping"});
  return phrases.first_affirmed(finding) ||
         std::ranges::any_of(read_clauses(finding), [&](const Clause& clause) {
           return std::ranges::any_of(clause, bad);
         });
}
}  // namespace furnish
