#include <algorithm>
#include <iterator>

#include "plan/caution_rules.h"
#include "plan/handling_rules.h"
#include "plan/places.h"

namespace furnish {
namespace {
void find_ruled_out_tools(const CautionInput& in, std::span<const RuledOut> ruled, Found& found) {
  for (const TrimPart& part : in.pet.trim) {
    const auto place = workable(part.place, in.pet.alerts);
    if (!place) continue;
    const RuledOut* const line = ruling_out(ruled, part.entry.tool, *place);
    if (line == nullptr) continue;
    const auto same = std::ranges::find_if(found, [&](const Caution& other) {
      return other.span.file == part.entry.span.file && other.span.begin == part.entry.span.begin &&
             std::get<std::string>(other.what.facts[1]) == line->words;
    });
    if (same != found.end()) {
      same->places.push_back(*place);
      continue;
    }
    Caution caution = make_caution(RuleId::against_handling, part.entry.span,
                                   {{}, {std::vector<Place>{}, line->words}});
    caution.places = {*place};
    caution.against = line->span;
    found.push_back(std::move(caution));
  }
  for (Caution& one : found) {
    std::ranges::sort(one.places);
    one.what.facts[0] = one.places;
  }
}

void find_ruled_out_drying(const CautionInput& in, Found& found) {
  const Drying& dry = in.drying;
  if (in.pet.bath.none || !dry.ruled_out) return;
  Caution caution = make_caution(RuleId::against_handling, dry.planned_span, {"dryer", {dry.words}},
                                 {"dryer", {}});
  caution.against = dry.span;
  found.push_back(std::move(caution));
}

/// Nobody has decided yet whether the felt or the water comes first.
void find_felt(const CautionInput& in, Found& found) {
  if (in.pet.bath.none || in.pet.bath.when || in.salon.felted) return;
  const std::vector<Place> felted = felted_places(in.latest);
  if (felted.empty()) return;
  const bool decided = std::ranges::all_of(felted, [&](Place place) {
    const TrimPart* const part = find_part(in.pet.trim, place);
    return part != nullptr && part->entry.before_bath;
  });
  if (decided) return;
  const bool no_bath_line = in.pet.bath.span.file == SourceSpan::no_file;
  Caution caution = make_caution(RuleId::felted_coat, no_bath_line ? in.pet.span : in.pet.bath.span,
                                 {{}, {felted, in.latest->date.value}});
  caution.places = felted;
  found.push_back(std::move(caution));
}
}  // namespace

void find_handling_cautions(const CautionInput& in, Found& all) {
  const std::vector<RuledOut> ruled = ruled_out(in.pet);
  Found found;
  find_ruled_out_tools(in, ruled, found);
  find_ruled_out_drying(in, found);
  find_felt(in, found);
  std::ranges::move(found, std::back_inserter(all));
}
}  // namespace furnish
