#include "plan/lengths.h"

#include <algorithm>

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
  if (const auto nominal = nominal_length(entry.tool, kit)) {
    out.left = left_by_cut(*nominal, entry.lay);
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

std::vector<PartLength> lengths_left(const Salon& salon, const Pet& pet) {
  std::vector<PartLength> out;
  for (const TrimPart& part : pet.trim) out.push_back(length_left(part, salon.kit, pet.coat));
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
