#include "plan/lengths.h"

#include <algorithm>

#include "plan/drawer.h"
#include "plan/restraints.h"

namespace furnish {
namespace {
LengthBasis basis_of(const Tool& tool) {
  if (std::holds_alternative<Clip>(tool)) return LengthBasis::blade;
  if (std::holds_alternative<CombOver>(tool)) return LengthBasis::comb;
  return LengthBasis::unknown;
}
}  // namespace

std::optional<Length> nominal_length(const Tool& tool, const std::optional<Kit>& kit) {
  if (const auto* const clip = std::get_if<Clip>(&tool)) {
    return kit ? kit->length(*clip->blade) : clip->blade->length();
  }
  if (const auto* const over = std::get_if<CombOver>(&tool)) return over->comb;
  return std::nullopt;
}

PartLength length_left(const TrimPart& part, const std::optional<Kit>& kit,
                       std::optional<Coat> coat) {
  const TrimEntry& entry = part.entry;
  PartLength out{part.place, basis_of(entry.tool), std::nullopt, entry.span};
  out.lay = entry.lay;
  if (const auto nominal = nominal_length(entry.tool, kit)) {
    out.left = out.basis == LengthBasis::comb ? left_by_comb(*nominal, entry.lay)
                                              : left_by_blade(*nominal, entry.lay);
  } else if (entry.leave) {
    out.basis = LengthBasis::stated;
    out.left = LengthRange{*entry.leave, *entry.leave};
  } else if (std::holds_alternative<Brush>(entry.tool) && coat) {
    const Length natural = natural_length(*coat, part.place.region);
    out.basis = LengthBasis::natural;
    out.left = LengthRange{natural, natural};
  }
  return out;
}

std::vector<PartLength> lengths_wished(const Salon& salon, const Pet& pet) {
  std::vector<PartLength> out;
  for (const TrimPart& part : pet.trim) out.push_back(length_left(part, salon.kit, pet.coat));
  return out;
}

std::vector<PartLength> lengths_left(const Salon& salon, const Pet& pet,
                                     std::span<const DrawerGap> gaps,
                                     std::span<const Caution> cautions) {
  std::vector<PartLength> out;
  for (TrimPart part : taken(pet.trim, cautions)) {
    // The gap is of the side that may be worked on; its part may be of both.
    const auto gap = std::ranges::find_if(gaps, [&](const DrawerGap& one) {
      return one.use && meets(one.place, part.place) && one.wanted == part.entry.tool;
    });
    const bool stands_in = gap != gaps.end();
    if (stands_in) part.entry.tool = *gap->use;
    out.push_back(length_left(part, salon.kit, pet.coat));
    out.back().substitute = stands_in;
  }
  return out;
}

const PartLength* find_length(const std::vector<PartLength>& rows, Place place) {
  const auto found =
      std::ranges::find_if(rows, [&](const PartLength& row) { return meets(row.place, place); });
  return found == rows.end() ? nullptr : &*found;
}

Length middle(LengthRange range) {
  return (range.low + range.high) / 2;
}
}  // namespace furnish
