#include "model/trim.h"

#include <algorithm>
#include <array>

namespace furnish {
namespace {
/// The rule for one side of a region, or for an unpaired region: the side's own before both's.
const TrimEntry* find_rule(const TrimRules& rules, Place place) {
  const TrimEntry* general = nullptr;
  for (const PlacedEntry& rule : rules) {
    if (rule.place == place) return &rule.entry;
    if (rule.place.region == place.region && rule.place.side == Side::both) general = &rule.entry;
  }
  return general;
}

std::optional<TrimPart> part_at(const TrimRules& style, const TrimRules& pet, Place place) {
  const TrimEntry* const house = find_rule(style, place);
  const TrimEntry* const own = find_rule(pet, place);
  if (own == nullptr && house == nullptr) return std::nullopt;
  TrimPart part{place, own != nullptr ? *own : *house, own != nullptr ? SaidBy::pet : SaidBy::style,
                std::nullopt};
  if (house != nullptr) part.house = *house;
  return part;
}

bool alike(const TrimPart& a, const TrimPart& b) {
  return same_work(a.entry, b.entry) && a.said_by == b.said_by && a.differs() == b.differs();
}
}  // namespace

bool same_work(const TrimEntry& a, const TrimEntry& b) {
  return a.tool == b.tool && a.leave == b.leave && a.lay == b.lay && a.note == b.note &&
         a.before_bath == b.before_bath;
}

ResolvedTrim resolve_trim(const TrimRules& style, const TrimRules& pet) {
  ResolvedTrim trim;
  for (const RegionInfo& row : regions()) {
    if (!row.paired) {
      if (auto part = part_at(style, pet, {row.region, Side::both})) trim.push_back(*part);
      continue;
    }
    auto left = part_at(style, pet, {row.region, Side::left});
    auto right = part_at(style, pet, {row.region, Side::right});
    if (left && right && alike(*left, *right)) {
      left->place.side = Side::both;
      trim.push_back(*left);
      continue;
    }
    if (left) trim.push_back(*left);
    if (right) trim.push_back(*right);
  }
  return trim;
}

const TrimPart* find_part(const ResolvedTrim& trim, Place place) {
  const auto found =
      std::ranges::find_if(trim, [&](const TrimPart& part) { return meets(part.place, place); });
  return found == trim.end() ? nullptr : &*found;
}

TrimRules overlay(const TrimRules& lower, const TrimRules& upper) {
  TrimRules out = upper;
  for (const PlacedEntry& rule : lower) {
    const bool replaced = std::ranges::any_of(upper, [&](const PlacedEntry& over) {
      return over.place == rule.place ||
             (over.place.region == rule.place.region && over.place.side == Side::both);
    });
    if (!replaced) out.push_back(rule);
  }
  std::ranges::sort(out, {}, &PlacedEntry::place);
  return out;
}
}  // namespace furnish
