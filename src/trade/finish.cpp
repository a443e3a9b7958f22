#include "trade/finish.h"

#include <array>

#include "base/text.h"

namespace furnish {
namespace {
using enum FinishPart;

constexpr std::array table{
    FinishInfo{ears, "natural", Method::ears_natural},
    FinishInfo{ears, "rounded", Method::ears_rounded},
    FinishInfo{ears, "straight edge", Method::ears_straight},
    FinishInfo{ears, "bevelled", Method::ears_rounded},
    FinishInfo{ears, "tassel", Method::ears_tassel},
    FinishInfo{ears, "vee", Method::ears_rounded},
    FinishInfo{ears, "shaved", Method::ears_shaved},
    FinishInfo{tail, "natural", Method::tail_natural},
    FinishInfo{tail, "plume", Method::tail},
    FinishInfo{tail, "flag", Method::tail_flag},
    FinishInfo{tail, "carrot", Method::tail_carrot},
    FinishInfo{tail, "tidied", Method::tail_tidied},
    FinishInfo{feet, "natural", Method::feet_natural},
    FinishInfo{feet, "hare foot", Method::feet},
    FinishInfo{feet, "cat foot", Method::feet_cat_foot},
    FinishInfo{feet, "round", Method::feet_round},
    FinishInfo{feet, "clean", Method::feet_clean},
    FinishInfo{nails, "clip, then grind", Method::nails},
    FinishInfo{nails, "clip", Method::nails},
    FinishInfo{nails, "grind", Method::nails_grind},
    FinishInfo{nails, "leave", Method::nails_leave},
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

TailEnd tail_end(std::string_view written) {
  if (const FinishInfo* finish = find_finish(FinishPart::tail, written)) {
    if (finish->how == Method::tail_carrot) return TailEnd::carrot;
    if (finish->how == Method::tail_flag) return TailEnd::flag;
  }
  return lower_ascii(written).find("ball") == std::string::npos ? TailEnd::natural : TailEnd::ball;
}
}  // namespace furnish
