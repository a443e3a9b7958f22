#include "trade/pose.h"

#include <algorithm>
#include <array>
#include <span>

#include "trade/phrases.h"

namespace furnish {
namespace {
using PoseList = std::span<const std::string_view>;
constexpr std::array<std::string_view, 5> lying_words{"lie", "lies", "lying", "laid", "lay"};
constexpr std::array<std::string_view, 6> lifting_words{"lift",  "lifts",  "lifted",
                                                        "raise", "raised", "lifting"};
constexpr std::array<std::string_view, 10> limb_words{"leg",  "legs",     "foot", "feet",  "paw",
                                                      "paws", "forelegs", "hock", "hocks", "limb"};

bool listed(PoseList list, const FreeWord& word) {
  return std::ranges::find(list, word.text) != list.end();
}

bool names(const Clause& clause, PoseList list) {
  return std::ranges::any_of(clause, [&](const FreeWord& word) { return listed(list, word); });
}

/// "On her side", "on either side".
bool on_its_side(const Clause& clause) {
  for (std::size_t i = 0; i + 2 < clause.size(); ++i) {
    if (clause[i].text == "on" && clause[i + 2].text == "side" && !clause[i + 2].denied)
      return true;
  }
  return false;
}

bool lies_in(const Clause& clause) {
  const auto lies = [](const FreeWord& word) { return listed(lying_words, word) && !word.denied; };
  return std::ranges::any_of(clause, lies) || on_its_side(clause);
}

bool keeps_low(const Clause& clause) {
  if (!names(clause, limb_words)) return false;
  const bool low = std::ranges::find(clause, "low", &FreeWord::text) != clause.end();
  const bool denied = std::ranges::find(clause, true, &FreeWord::denied) != clause.end();
  return low || (denied && names(clause, lifting_words));
}
}  // namespace

PoseWords read_pose(std::string_view words) {
  PoseWords out;
  for (const Clause& clause : read_clauses(words)) {
    out.lies = out.lies || lies_in(clause);
    out.feet_low = out.feet_low || keeps_low(clause);
  }
  return out;
}
}  // namespace furnish
