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

constexpr std::array<std::string_view, 1> only{"only"};
constexpr std::array<std::string_view, 8> gentle{"quiet", "low",    "cool", "hand",
                                                 "towel", "towels", "air",  "natural"};
constexpr std::array<std::string_view, 3> still{"towel", "towels", "natural"};
constexpr std::array<std::string_view, 3> dryers{"dryer", "dryers", "drying"};

bool names_kind(const Clause& clause) {
  return has(clause, force_words) || has(clause, heat_words) || has(clause, cage_words);
}

/// "Quiet air only", "towel only": of the whole dog, not "on the head only".
void gentle_only(const Clause& clause, DryerWords& out) {
  if (!has(clause, only) || !has(clause, gentle) || names_kind(clause)) return;
  if (has(clause, head_words) || has(clause, ear_words)) return;
  out.no_force = true;
  if (has(clause, still)) out.no_heated = out.no_cage = true;
}

/// "No dryer", "never near a dryer".
void no_dryer_at_all(const Clause& clause, DryerWords& out) {
  if (names_kind(clause) || has(clause, head_words) || has(clause, ear_words)) return;
  // Right after the negation: "never alone under the dryer" is no such word.
  const auto first = std::ranges::find(clause, true, &FreeWord::denied);
  const auto end = clause.end() - first > 2 ? first + 2 : clause.end();
  const bool denied = std::any_of(first, end, [](const FreeWord& w) { return in(dryers, w.text); });
  if (denied) out.no_force = out.no_heated = out.no_cage = true;
}

/// "No force dryer on the head": spares it, and rules out no more.
bool only_near(const Clause& clause) {
  constexpr std::array<std::string_view, 7> near{"on", "at", "near", "around", "over", "in", "by"};
  for (std::size_t i = 0; i + 1 < clause.size(); ++i) {
    if (!in(near, clause[i].text)) continue;
    const auto end = std::min(i + 3, clause.size() - 1);  // "on the head", "on his left ear"
    for (std::size_t k = i + 1; k <= end; ++k) {
      if (in(head_words, clause[k].text) || in(ear_words, clause[k].text)) return true;
    }
  }
  return false;
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
    const bool near = only_near(clause);
    for (std::size_t i = 0; i < clause.size(); ++i) {
      const auto& [text, denied] = clause[i];
      const std::string_view next =
          i + 1 < clause.size() ? std::string_view(clause[i + 1].text) : "";
      const bool kennel_dryer = text == "kennel" && next.starts_with("dr");
      note(in(force_words, text) && !(denied && near), denied, out.force, out.no_force);
      note(in(heat_words, text) && !in(no_dryer, next), denied, out.heated, out.no_heated);
      note(in(cage_words, text) || kennel_dryer, denied, out.cage, out.no_cage);
    }
    const bool body_only = has(clause, std::array<std::string_view, 1>{"body"}) &&
                           has(clause, std::array<std::string_view, 1>{"only"});
    out.head_spared = out.head_spared || body_only || spares(clause, head_words);
    out.ears_spared = out.ears_spared || spares(clause, ear_words);
    gentle_only(clause, out);
    no_dryer_at_all(clause, out);
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
