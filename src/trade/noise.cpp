#include "trade/noise.h"

#include <algorithm>
#include <array>
#include <span>

#include "trade/phrases.h"

namespace furnish {
namespace {
constexpr std::array<std::string_view, 2> noun{"noise", "noises"};
constexpr std::array<std::string_view, 15> noisy{
    "noise", "noises",  "noisy", "loud",    "sound", "sounds",  "buzz",  "buzzes",
    "hum",   "humming", "roar",  "roaring", "whine", "buzzing", "whines"};
constexpr std::array<std::string_view, 4> clippers{"clipper", "clippers", "trimmer", "trimmers"};
constexpr std::array<std::string_view, 3> grinders{"grinder", "grinders", "grinding"};
constexpr std::array<std::string_view, 8> dryers{"dryer",  "dryers",  "drier",   "driers",
                                                 "blower", "blowers", "blaster", "blasters"};

bool names(const Clause& clause, std::span<const std::string_view> words, Naming how) {
  return std::ranges::any_of(clause, [&](const FreeWord& word) {
    const bool counts = how == Naming::lists || !word.denied;
    return counts && std::ranges::find(words, word.text) != words.end();
  });
}
}  // namespace

NoiseWords read_noise(std::string_view words, Naming how) {
  NoiseWords out;
  for (const Clause& clause : read_clauses(words)) {
    if (!names(clause, noisy, how)) continue;
    const bool clipper = names(clause, clippers, how), grinder = names(clause, grinders, how),
               dryer = names(clause, dryers, how);
    const bool any = !clipper && !grinder && !dryer && names(clause, noun, how);
    out.clipper = out.clipper || clipper || any;
    out.grinder = out.grinder || grinder || any;
    out.dryer = out.dryer || dryer || any;
  }
  return out;
}
}  // namespace furnish
