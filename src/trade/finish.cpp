#include "trade/finish.h"

#include <array>

#include "base/text.h"

namespace furnish {
namespace {
using enum FinishPart;

constexpr std::string_view edge_of_leather = "find the edge of the leather with the fingers first";

constexpr std::array table{
    FinishInfo{ears, "natural", "comb through; take only what hangs out of line"},
    FinishInfo{ears, "rounded", edge_of_leather},
    FinishInfo{ears, "straight edge",
               "fold the leather in half lengthwise, keep its edge between two fingers, cut what "
               "stands beyond them; then hold the ear forward and take what pops out on top; if "
               "unsure, leave them full"},
    FinishInfo{ears, "bevelled", edge_of_leather},
    FinishInfo{ears, "tassel", "clip the leather, leave the tip; both sides the same height"},
    FinishInfo{ears, "vee", edge_of_leather},
    FinishInfo{ears, "shaved", "from the middle out to the edge, never toward a fold"},
    FinishInfo{tail, "natural", "comb through; take only what drags or is soiled"},
    FinishInfo{
        tail, "plume",
        "hand down to the last bone before any cut at the tip; then hold it straight out and "
        "take what hangs over"},
    FinishInfo{tail, "flag", "hold straight out, comb down, longest in the middle third"},
    FinishInfo{tail, "carrot", "thick at the root, even taper to the tip"},
    FinishInfo{tail, "tidied", "hand down to the last bone before any cut at the tip"},
    FinishInfo{feet, "natural", "once round at the edge of the pad"},
    FinishInfo{
        feet, "hare foot",
        "brush up between the toes, cut to the length of the hair on top; then once round at "
        "the edge of the pad"},
    FinishInfo{feet, "cat foot", "tight and round, dog standing square, no toe showing"},
    FinishInfo{feet, "round", "dog standing square; curved shears round the foot, then bevel"},
    FinishInfo{feet, "clean", "a close blade to the top of the toes, skin between them in sight"},
    FinishInfo{nails, "clip, then grind", "after the bath, when they are soft and split less"},
    FinishInfo{nails, "clip", "after the bath, when they are soft and split less"},
    FinishInfo{nails, "grind", "short touches; the nail gets hot"},
    FinishInfo{nails, "leave", "not touched"},
};
constexpr std::array<std::string_view, finish_part_count> keys{"ears", "tail", "feet", "nails",
                                                               "extras"};
}  // namespace

std::string_view key(FinishPart part) {
  return keys.at(static_cast<std::size_t>(part));
}

std::optional<FinishPart> finish_part(Region region) {
  switch (region) {
    case Region::ears:
      return ears;
    case Region::tail:
      return tail;
    case Region::feet:
      return feet;
    default:
      return std::nullopt;
  }
}

std::span<const FinishInfo> finishes() {
  return table;
}

const FinishInfo* find_finish(FinishPart part, std::string_view written) {
  const std::string words = lower_ascii(trimmed(written));
  const FinishInfo* best = nullptr;
  for (const FinishInfo& row : table) {
    if (row.part != part || !words.starts_with(row.words)) continue;
    if (best == nullptr || row.words.size() > best->words.size()) best = &row;
  }
  return best;
}
}  // namespace furnish
