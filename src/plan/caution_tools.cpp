#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "plan/caution_rules.h"
#include "plan/places.h"
#include "plan/tool_rules.h"
#include "trade/finish.h"
#include "trade/health.h"

namespace furnish {
namespace {
bool same_place_in_file(const SourceSpan& a, const SourceSpan& b) {
  return a.file == b.file && a.begin == b.begin;
}

/// Regions that one line of the file speaks of stand in one caution.
void add_at(Found& found, Caution caution, Place place) {
  for (Caution& other : found) {
    const bool same = other.rule == caution.rule && other.instead == caution.instead &&
                      same_place_in_file(other.span, caution.span);
    if (!same) continue;
    if (std::ranges::find(other.places, place) == other.places.end()) other.places.push_back(place);
    return;
  }
  caution.places = {place};
  found.push_back(std::move(caution));
}

Saying instead_for(RuleId id, const Tool& tool) {
  const auto* const clip = std::get_if<Clip>(&tool);
  const Blade* const twin = clip != nullptr ? finish_twin(*clip->blade) : nullptr;
  if (id == RuleId::skip_tooth && twin != nullptr) {
    return {fmt::format("the finish twin, #{}", twin->name), "-twin", {twin}};
  }
  return {};
}

/// What of `place` an alert keeps every tool from.
std::vector<Place> kept_from(Place place, const Pet& pet) {
  std::vector<Place> out;
  for (const Side side : {Side::left, Side::right}) {
    const bool paired = info(place.region).paired;
    const Place one{place.region, paired ? side : Side::both};
    if (meets(one, place) && avoided(one, pet.alerts)) out.push_back(one);
    if (!paired) break;
  }
  if (out.size() == 2) return {{place.region, Side::both}};
  return out;
}

void find_avoided(const CautionInput& in, Found& found) {
  for (const TrimPart& part : in.pet.trim) {
    if (!cuts(part.entry.tool)) continue;
    for (const Place place : kept_from(part.place, in.pet)) {
      add_at(found, make_caution(RuleId::avoid_region, part.entry.span), place);
    }
  }
}

void find_matted_ears(const CautionInput& in, Found& found) {
  const Place ears{Region::ears, Side::both};
  for (const FinishLine& line : in.pet.finish) {
    const FinishInfo* const known =
        line.part == "ears" ? find_finish(FinishPart::ears, line.words) : nullptr;
    if (known == nullptr || known->words != "shaved" || mats_at(in.latest, ears) == 0) continue;
    if (std::ranges::find(found, RuleId::ear_mats, &Caution::rule) != found.end()) continue;
    add_at(found, make_caution(RuleId::ear_mats, line.span), ears);
  }
}

/// Clipping without a pause: cuts one after another with the same blade, bare or under a comb.
void find_hot_blade(const CautionInput& in, Found& found) {
  const auto blade_of = [](const WorkStep& step) -> const Blade* {
    if (!step.tool) return nullptr;
    if (const auto* const clip = std::get_if<Clip>(&*step.tool)) return clip->blade;
    if (const auto* const over = std::get_if<CombOver>(&*step.tool)) return over->base;
    return nullptr;
  };
  for (std::size_t i = 0; i < in.order.size();) {
    const Blade* const blade = blade_of(in.order[i]);
    std::vector<Place> places;
    std::size_t next = i;
    while (next < in.order.size() && blade_of(in.order[next]) == blade) {
      std::ranges::copy(in.order[next].places, std::back_inserter(places));
      ++next;
    }
    i = next;
    const double minutes = static_cast<double>(places.size()) * in.salon.time.clip_per_part;
    if (blade == nullptr || minutes <= static_cast<double>(blade_heats_after.count())) continue;
    const TrimPart* const part = find_part(in.pet.trim, places.front());
    Caution caution =
        make_caution(RuleId::blade_heat, part != nullptr ? part->entry.span : SourceSpan{},
                     {fmt::format("#{}: about {:.0f} min of clipping on end", blade->name, minutes),
                      "",
                      {blade, static_cast<int>(std::lround(minutes))}});
    std::ranges::sort(places);
    caution.places = places;
    found.push_back(caution);
  }
}

void find_mat_wound(const CautionInput& in, Found& found) {
  if (in.latest == nullptr) return;
  const auto limb_or_tail = [](Region r) {
    return in_group(r, Group::legs) || r == Region::fringe || r == Region::feet ||
           r == Region::pads || r == Region::tail || r == Region::breeches;
  };
  for (const RegionState& state : in.latest->came_in.regions) {
    if (!state.encircling || !limb_or_tail(state.place.region)) continue;
    const Date day = in.latest->date.value;
    const bool past = day < in.today;
    const std::vector<Place> where{state.place};
    Saying what{fmt::format("{}: a mat all round; it may cut off the blood", places_phrase(where)),
                "",
                {where}};
    Saying instead;
    if (past) {
      what = {fmt::format("{}: a mat all round on {}; it may cut off the blood",
                          places_phrase(where), to_iso(day)),
              "-past",
              {where, day}};
      instead = {"has a vet seen it? look there first", "-past", {}};
    }
    Caution caution =
        make_caution(RuleId::mat_wound, state.span, std::move(what), std::move(instead));
    caution.places = {state.place};
    found.push_back(caution);
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
  const Date day = in.latest->date.value;
  Caution caution = make_caution(
      RuleId::thin_skin, span,
      {fmt::format("{} matted on {}, on thin skin", places_phrase(matted), to_iso(day)),
       "-mats",
       {matted, day}},
      {"leave these mats to a vet", "-mats", {}});
  caution.places = matted;
  found.push_back(std::move(caution));
}

/// The rule's words with the places before them, once all of them are known.
void name_places(Found& found) {
  for (Caution& one : found) {
    if (one.rule == RuleId::blade_heat || one.rule == RuleId::mat_wound) continue;
    std::ranges::sort(one.places);
    const std::string where = places_phrase(one.places);
    if (one.rule == RuleId::avoid_region) {
      one.what = where + ": no tool there";
      one.what_said.facts = {one.places};
    } else if (one.rule != RuleId::sanitary_blade && one.rule != RuleId::pads_blade &&
               one.rule != RuleId::sanitary_shears && one.rule != RuleId::ear_edge &&
               one.rule != RuleId::ear_mats) {
      one.what = fmt::format("{}: {}", where, uncapitalised(one.what));
      one.what_said.facts = {one.places};
    }
  }
}
}  // namespace

void find_tool_cautions(const CautionInput& in, Found& all) {
  Found found;
  find_avoided(in, found);
  for (std::size_t i = 0; i < in.pet.trim.size(); ++i) {
    const TrimPart& part = in.pet.trim[i];
    const auto place = workable(part.place, in.pet.alerts);
    if (!place) continue;  // avoid_region says it
    const auto least = i < in.lengths.size() && in.lengths[i].left
                           ? std::optional(in.lengths[i].left->low)
                           : std::nullopt;
    for (const RuleId id :
         tool_rules(part.entry.tool, least, *place, in.pet, in.latest, part.entry.lay)) {
      add_at(found, make_caution(id, part.entry.span, {}, instead_for(id, part.entry.tool)),
             *place);
    }
  }
  find_matted_ears(in, found);
  find_hot_blade(in, found);
  find_mat_wound(in, found);
  name_places(found);
  find_mats_on_thin_skin(in, found);
  std::ranges::move(found, std::back_inserter(all));
}
}  // namespace furnish
