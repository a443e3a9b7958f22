#include <algorithm>
#include <cmath>

#include "plan/caution_rules.h"
#include "plan/places.h"
#include "plan/tool_rules.h"
#include "trade/finish.h"
#include "trade/health.h"
#include "trade/mats.h"

namespace furnish {
namespace {
/// Cautions about places of the trim. Places that one line of the file speaks of are one caution.
class TrimCautions {
 public:
  void add(RuleId id, SourceSpan line, Place place, Saying instead = {}) {
    Caution caution = make_caution(id, line, {}, std::move(instead));
    const auto same = std::ranges::find_if(found_, [&](const Caution& other) {
      return other.rule == id && other.instead == caution.instead && other.span.file == line.file &&
             other.span.begin == line.begin;
    });
    if (same == found_.end()) {
      caution.places = {place};
      found_.push_back(std::move(caution));
    } else if (std::ranges::find(same->places, place) == same->places.end()) {
      same->places.push_back(place);
    }
  }

  bool have(RuleId id) const {
    return std::ranges::find(found_, id, &Caution::rule) != found_.end();
  }

  /// Once all places are known, their sentences may name them.
  void move_to(Found& all) {
    for (Caution& one : found_) {
      std::ranges::sort(one.places);
      one.what.facts = {one.places};
      all.push_back(std::move(one));
    }
    found_.clear();
  }

 private:
  Found found_;
};

/// What of `place` an alert keeps every tool from.
std::optional<Place> kept_from(Place place, const Pet& pet) {
  const auto kept = [&](Side side) {
    const Place one{place.region, side};
    return meets(one, place) && avoided(one, pet.alerts);
  };
  if (!info(place.region).paired) {
    return kept(Side::both) ? std::optional(Place{place.region, Side::both}) : std::nullopt;
  }
  const bool left = kept(Side::left), right = kept(Side::right);
  if (left && right) return Place{place.region, Side::both};
  if (left) return Place{place.region, Side::left};
  if (right) return Place{place.region, Side::right};
  return std::nullopt;
}

void find_avoided(const Pet& pet, TrimCautions& found) {
  for (const TrimPart& part : pet.trim) {
    if (!cuts(part.entry.tool)) continue;
    if (const auto place = kept_from(part.place, pet)) {
      found.add(RuleId::avoid_region, part.entry.span, *place);
    }
  }
}

/// A blade without skip teeth that leaves the same is named, where there is one; felt is not
/// combed.
Saying advice(RuleId id, const Tool& tool, int mats) {
  if (id == RuleId::comb_on_mats && mats >= worst_mats) return {"felt", {}};
  const auto* const clip = std::get_if<Clip>(&tool);
  if (id != RuleId::skip_tooth || clip == nullptr) return {};
  const Blade* const twin = finish_twin(*clip->blade);
  return twin != nullptr ? Saying{"twin", {twin}} : Saying{};
}

void find_wrong_tools(const CautionInput& in, TrimCautions& found) {
  for (std::size_t i = 0; i < in.pet.trim.size(); ++i) {
    const TrimEntry& entry = in.pet.trim[i].entry;
    const auto place = workable(in.pet.trim[i].place, in.pet.alerts);
    if (!place) continue;  // avoid_region says it
    std::optional<Length> least;
    if (i < in.lengths.size() && in.lengths[i].left) least = in.lengths[i].left->low;
    for (const RuleId id : tool_rules(entry.tool, least, *place, in.pet, in.latest, entry.lay)) {
      found.add(id, entry.span, *place, advice(id, entry.tool, mats_at(in.latest, *place)));
    }
  }
}

/// Matted ears that are to be shaved as their finish, if no tool of the trim shaves them already.
void find_matted_ears(const CautionInput& in, TrimCautions& found) {
  constexpr Place ears{Region::ears, Side::both};
  if (mats_at(in.latest, ears) == 0 || found.have(RuleId::ear_mats)) return;
  const FinishLine* const line = find_line(in.pet.finish, FinishPart::ears);
  if (line == nullptr) return;
  const FinishInfo* const known = find_finish(FinishPart::ears, line->words.value);
  if (known == nullptr || known->words != "shaved") return;
  found.add(RuleId::ear_mats, line->span, ears);
}

/// The blade that a step cuts with, bare or under a comb; null for all other steps.
const Blade* blade_of(const WorkStep& step) {
  if (!step.tool) return nullptr;
  if (const auto* const clip = std::get_if<Clip>(&*step.tool)) return clip->blade;
  if (const auto* const over = std::get_if<CombOver>(&*step.tool)) return over->base;
  return nullptr;
}

/// Clipping without a pause: steps one after another with the same blade.
void find_hot_blade(const CautionInput& in, Found& found) {
  for (auto step = in.order.begin(); step != in.order.end();) {
    const Blade* const blade = blade_of(*step);
    std::vector<Place> places;
    for (; step != in.order.end() && blade_of(*step) == blade; ++step) {
      std::ranges::copy(step->places, std::back_inserter(places));
    }
    const double minutes = static_cast<double>(places.size()) * in.salon.time.clip_per_part;
    if (blade == nullptr || minutes <= static_cast<double>(blade_heats_after.count())) continue;
    const TrimPart* const first = find_part(in.pet.trim, places.front());
    Caution caution =
        make_caution(RuleId::blade_heat, first != nullptr ? first->entry.span : SourceSpan{},
                     {{}, {blade, static_cast<int>(std::lround(minutes))}});
    std::ranges::sort(places);
    caution.places = std::move(places);
    found.push_back(std::move(caution));
  }
}

bool limb_or_tail(Region region) {
  switch (region) {
    case Region::fringe:
    case Region::feet:
    case Region::pads:
    case Region::tail:
    case Region::breeches:
      return true;
    default:
      return in_group(region, Group::legs);
  }
}

void find_mat_wound(const CautionInput& in, Found& found) {
  if (in.latest == nullptr) return;
  const Date day = in.latest->date.value;
  const bool past = day < in.today;
  for (const RegionState& state : in.latest->came_in.regions) {
    if (!state.encircling || !limb_or_tail(state.place.region)) continue;
    const std::vector<Place> where{state.place};
    Caution caution =
        past ? make_caution(RuleId::mat_wound, state.span, {"past", {where, day}}, {"past", {}})
             : make_caution(RuleId::mat_wound, state.span, {{}, {where}});
    caution.places = where;
    found.push_back(std::move(caution));
  }
}

/// Mats on skin that tears are nobody's here.
void find_mats_on_thin_skin(const CautionInput& in, Found& found) {
  if (in.latest == nullptr || !tearing_skin(in.pet)) return;
  std::vector<Place> matted;
  SourceSpan span;
  for (const RegionState& state : in.latest->came_in.regions) {
    if (state.mats.value_or(0) < 2) continue;  // a tangle opens under the comb
    matted.push_back(state.place);
    if (matted.size() == 1 || state.span.begin < span.begin) span = state.span;
  }
  if (matted.empty()) return;
  std::ranges::sort(matted);
  Caution caution = make_caution(RuleId::thin_skin, span, {"mats", {matted, in.latest->date.value}},
                                 {"mats", {}});
  caution.places = std::move(matted);
  found.push_back(std::move(caution));
}
}  // namespace

void find_tool_cautions(const CautionInput& in, Found& all) {
  TrimCautions found;
  find_avoided(in.pet, found);
  find_wrong_tools(in, found);
  find_matted_ears(in, found);
  found.move_to(all);
  find_hot_blade(in, all);
  find_mat_wound(in, all);
  find_mats_on_thin_skin(in, all);
}
}  // namespace furnish
