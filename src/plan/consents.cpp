#include "plan/consents.h"

#include <algorithm>
#include <array>

#include "plan/clinical.h"
#include "trade/mats.h"
#include "trade/phrases.h"

namespace furnish {
namespace {
/// Beginnings of the words that name a thing in English.
std::span<const std::string_view> names(ConsentTo what) {
  constexpr static std::array<std::string_view, 3> cutting_out{"mat", "felt", "cut"};
  constexpr static std::array<std::string_view, 3> clipping_short{"short", "shav", "clip"};
  return what == ConsentTo::cutting_out ? cutting_out : clipping_short;
}

bool cut_out(const Visit& visit) {
  return std::ranges::any_of(visit.came_in.regions, [](const RegionState& state) {
    return state.mats.value_or(0) >= mats_cut_out;
  });
}

/// The body of a double coat left short, by plan or by what was done; what is naturally short is
/// not cut.
bool clipped_short(const Pet& pet, std::span<const RegionGrowth> growth) {
  return std::ranges::any_of(growth, [&](const RegionGrowth& row) {
    const bool natural = row.natural && row.left.high >= *row.natural;
    return !natural && too_short_for_double_coat(pet, row.place.region, row.left.low);
  });
}

bool accepted(RuleId rule, std::span<const Caution> cautions) {
  return std::ranges::any_of(cautions,
                             [&](const Caution& one) { return one.rule == rule && one.accepted; });
}
}  // namespace

bool agreed_to(std::span<const Consent> consents, ConsentTo what, std::string_view language) {
  if (!language.starts_with("en")) return !consents.empty();
  return std::ranges::any_of(consents, [&](const Consent& consent) {
    return std::ranges::any_of(
        names(what), [&](std::string_view name) { return mentions(consent.to.value, name); });
  });
}

std::vector<ConsentTo> consents_missing(const Visit& visit, const Pet& pet,
                                        std::span<const RegionGrowth> growth,
                                        std::span<const Caution> cautions,
                                        std::string_view language) {
  std::vector<ConsentTo> out;
  const auto ask = [&](ConsentTo what, bool called_for) {
    if (called_for && !agreed_to(visit.consents, what, language)) out.push_back(what);
  };
  ask(ConsentTo::cutting_out, cut_out(visit));
  ask(ConsentTo::clipping_short,
      clipped_short(pet, growth) && !accepted(RuleId::double_coat_short, cautions));
  return out;
}
}  // namespace furnish
