#include "plan/drawer.h"

#include <algorithm>
#include <tuple>

#include "plan/lengths.h"
#include "plan/places.h"
#include "plan/tool_rules.h"

namespace furnish {
namespace {
bool says_nothing(const std::optional<Kit>& kit) {
  return !kit || (kit->blades.empty() && kit->combs.empty() && kit->shears.empty());
}

template <typename T>
bool holds(const std::vector<T>& list, T wanted) {
  return std::ranges::find(list, wanted) != list.end();
}

bool has_comb(const Kit& kit, Length comb) {
  return std::ranges::any_of(kit.combs, [&](Length own) {
    return own - comb <= comb_tolerance && comb - own <= comb_tolerance;
  });
}

/// Shears that do the same kind of work.
Shears stand_in(Shears shears) {
  switch (shears) {
    case Shears::straight:
      return Shears::curved;
    case Shears::curved:
      return Shears::straight;
    case Shears::thinning:
      return Shears::blending;
    case Shears::blending:
      break;
  }
  return Shears::thinning;
}

const Blade* blade_of(const Tool& tool) {
  if (const auto* const clip = std::get_if<Clip>(&tool)) return clip->blade;
  if (const auto* const over = std::get_if<CombOver>(&tool)) return over->base;
  return nullptr;
}

/// How far from wanted, then what breaks ties; less is better, and of equals the first.
auto rank(const Tool& candidate, Length left, const Tool& wanted, Length goal) {
  const Length off = left < goal ? goal - left : left - goal;
  const Blade* const blade = blade_of(candidate);
  return std::tuple(off, left < goal, candidate.index() != wanted.index(),
                    blade != blade_of(wanted), blade->teeth == Teeth::skip);
}

std::optional<Tool> nearest_clipper(const Tool& wanted, Place place, const Salon& salon,
                                    const Pet& pet, const Visit* latest) {
  const Length goal = *nominal_length(wanted, salon.kit);
  std::optional<Tool> best;
  Length best_left;
  for (const Tool& candidate : clipper_tools(salon.kit)) {
    const Length left = *nominal_length(candidate, salon.kit);
    const Length off = left < goal ? goal - left : left - goal;
    if (candidate == wanted || off > substitute_within) continue;
    if (forbidden(candidate, left, place, pet, latest)) continue;
    if (!best || rank(candidate, left, wanted, goal) < rank(*best, best_left, wanted, goal)) {
      best = candidate;
      best_left = left;
    }
  }
  return best;
}
}  // namespace

bool in_drawer(const Tool& tool, const std::optional<Kit>& kit) {
  if (says_nothing(kit)) return true;
  if (const auto* const clip = std::get_if<Clip>(&tool)) return holds(kit->blades, clip->blade);
  if (const auto* const scissor = std::get_if<Scissor>(&tool)) {
    return holds(kit->shears, scissor->shears);
  }
  if (const auto* const over = std::get_if<CombOver>(&tool)) {
    return has_comb(*kit, over->comb) && holds(kit->blades, over->base);
  }
  return true;
}

std::vector<Tool> clipper_tools(const std::optional<Kit>& kit) {
  std::vector<Tool> out;
  if (says_nothing(kit)) {
    for (const Blade& blade : blades()) out.emplace_back(Clip{&blade});
    for (const Length comb : guard_combs()) out.emplace_back(CombOver{comb, find_blade("30")});
    return out;
  }
  // By table and length, so that the order of the salon's list decides nothing.
  for (const Blade& blade : blades()) {
    if (holds(kit->blades, &blade)) out.emplace_back(Clip{&blade});
  }
  std::vector<Length> combs = kit->combs;
  std::ranges::sort(combs);
  // The usual base first: of two tools alike it is taken.
  for (const Length comb : combs) {
    for (const Blade* const base : {find_blade("30"), find_blade("40")}) {
      if (holds(kit->blades, base)) out.emplace_back(CombOver{comb, base});
    }
  }
  return out;
}

std::optional<Tool> substitute(const TrimPart& part, const Salon& salon, const Pet& pet,
                               const Visit* latest) {
  const Tool& wanted = part.entry.tool;
  if (nominal_length(wanted, salon.kit)) {
    return nearest_clipper(wanted, part.place, salon, pet, latest);
  }
  const auto* const scissor = std::get_if<Scissor>(&wanted);
  if (scissor == nullptr) return std::nullopt;
  const Tool other = Scissor{stand_in(scissor->shears)};
  if (!in_drawer(other, salon.kit)) return std::nullopt;
  if (forbidden(other, part.entry.leave, part.place, pet, latest)) return std::nullopt;
  return other;
}

std::vector<DrawerGap> drawer_gaps(const Salon& salon, const Pet& pet, const Visit* latest) {
  std::vector<DrawerGap> out;
  for (TrimPart part : pet.trim) {
    if (in_drawer(part.entry.tool, salon.kit)) continue;
    const auto place = workable(part.place, pet.alerts);
    if (!place) continue;
    part.place = *place;
    DrawerGap gap{*place,       part.entry.tool, substitute(part, salon, pet, latest),
                  std::nullopt, part.entry.span, {}};
    if (gap.use) {
      const auto left = nominal_length(*gap.use, salon.kit);
      gap.difference = left ? *left - *nominal_length(gap.wanted, salon.kit) : Length();
      const PartLength wished = length_left(part, salon.kit, pet.coat);
      part.entry.tool = *gap.use;
      const PartLength real = length_left(part, salon.kit, pet.coat);
      if (left && wished.left && real.left) gap.apart_at_most = real.left->high - wished.left->high;
    }
    out.push_back(gap);
  }
  return out;
}

const DrawerGap* find_gap(std::span<const DrawerGap> gaps, Place place) {
  const auto found = std::ranges::find(gaps, place, &DrawerGap::place);
  return found == gaps.end() ? nullptr : &*found;
}
}  // namespace furnish
