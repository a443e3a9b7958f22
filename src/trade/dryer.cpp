#include "trade/dryer.h"

#include <algorithm>
#include <array>
#include <span>

#include "trade/phrases.h"

namespace furnish {
namespace {
using Words = std::span<const std::string_view>;
constexpr std::array<std::string_view, 6> force_words{"force",   "forced", "velocity",
                                                      "blaster", "blower", "blasters"};
constexpr std::array<std::string_view, 5> heat_words{"heated", "heat", "hot", "warm", "heater"};
constexpr std::array<std::string_view, 6> cage_words{"cage",   "cages",   "crate",
                                                     "crates", "cabinet", "cabinets"};
constexpr std::array<std::string_view, 4> head_words{"head", "face", "muzzle", "eyes"};
constexpr std::array<std::string_view, 2> ear_words{"ear", "ears"};
constexpr std::array<std::string_view, 12> gentler{"off",    "away",    "except", "towel",
                                                   "towels", "low",     "cool",   "hand",
                                                   "cover",  "covered", "cotton", "keep"};
constexpr std::array<std::string_view, 4> no_dryer{"towel", "towels", "room", "water"};

bool in(Words list, std::string_view word) {
  return std::ranges::find(list, word) != list.end();
}

bool has(const Clause& clause, Words list) {
  return std::ranges::any_of(clause, [&](const FreeWord& w) { return in(list, w.text); });
}

/// Where a clause speaks of a kind of dryer, whether it wants it.
void note(bool found, bool denied, bool& used, bool& refused) {
  if (!found) return;
  (denied ? refused : used) = true;
}

bool spares(const Clause& clause, Words part) {
  const bool denied =
      std::ranges::any_of(clause, [&](const FreeWord& w) { return in(part, w.text) && w.denied; });
  return denied || (has(clause, part) && has(clause, gentler));
}
}  // namespace

DryerWords read_dryer(std::string_view words) {
  DryerWords out;
  for (const Clause& clause : read_clauses(words)) {
    for (std::size_t i = 0; i < clause.size(); ++i) {
      const auto& [text, denied] = clause[i];
      const std::string_view next =
          i + 1 < clause.size() ? std::string_view(clause[i + 1].text) : "";
      const bool kennel_dryer = text == "kennel" && next.starts_with("dr");
      note(in(force_words, text), denied, out.force, out.no_force);
      note(in(heat_words, text) && !in(no_dryer, next), denied, out.heated, out.no_heated);
      note(in(cage_words, text) || kennel_dryer, denied, out.cage, out.no_cage);
    }
    const bool body_only = has(clause, std::array<std::string_view, 1>{"body"}) &&
                           has(clause, std::array<std::string_view, 1>{"only"});
    out.head_spared = out.head_spared || body_only || spares(clause, head_words);
    out.ears_spared = out.ears_spared || spares(clause, ear_words);
  }
  out.ears_spared = out.ears_spared || out.head_spared;
  return out;
}

DryerWords combined(DryerWords a, DryerWords b) {
  return {a.force || b.force,
          a.heated || b.heated,
          a.cage || b.cage,
          a.no_force || b.no_force,
          a.no_heated || b.no_heated,
          a.no_cage || b.no_cage,
          a.head_spared || b.head_spared,
          a.ears_spared || b.ears_spared};
}
}  // namespace furnish
