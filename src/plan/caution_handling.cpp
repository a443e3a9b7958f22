#include <algorithm>
#include <iterator>

#include "plan/caution_rules.h"
#include "plan/handling_rules.h"
#include "plan/places.h"
#include "trade/dryer.h"
#include "trade/noise.h"
#include "trade/phrases.h"

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

/// A line that names the noise of machines.
struct NoisyLine {
  std::string words;
  SourceSpan span;
  NoiseWords named;
};
std::vector<NoisyLine> noisy_lines(const Pet& pet) {
  std::vector<NoisyLine> out;
  const auto add = [&](const std::string& words, SourceSpan span, Naming how) {
    const NoiseWords named = read_noise(words, how);
    if (named.clipper || named.grinder || named.dryer) out.push_back({words, span, named});
  };
  for (const Alert& alert : pet.alerts) add(alert.text.value, alert.span, Naming::says);
  add(pet.handling.stop, pet.handling.stop_span, Naming::says);
  for (const std::string& words : pet.preferences.dislikes) {
    add(words, pet.preferences.dislikes_span, Naming::lists);
  }
  return out;
}

/// The machines that are planned against the first line that names the noise of each.
void find_noise(const CautionInput& in, Found& found) {
  const std::vector<NoisyLine> lines = noisy_lines(in.pet);
  const auto add = [&](bool NoiseWords::*machine, SourceSpan planned, std::string_view variant,
                       std::vector<CautionFact> facts) {
    const auto line =
        std::ranges::find_if(lines, [&](const NoisyLine& one) { return one.named.*machine; });
    if (line == lines.end()) return;
    facts.emplace_back(line->words);
    Caution caution = make_caution(RuleId::noise, planned, {variant, std::move(facts)});
    caution.against = line->span;
    found.push_back(std::move(caution));
  };
  std::vector<Place> clipped;
  SourceSpan span;
  for (const TrimPart& part : in.pet.trim) {
    const bool clipper = std::holds_alternative<Clip>(part.entry.tool) ||
                         std::holds_alternative<CombOver>(part.entry.tool);
    const auto place = clipper ? workable(part.place, in.pet.alerts) : std::nullopt;
    if (!place) continue;
    if (clipped.empty()) span = part.entry.span;
    clipped.push_back(*place);
  }
  std::ranges::sort(clipped);
  if (!clipped.empty()) add(&NoiseWords::clipper, span, "clipper", {clipped});
  const FinishLine* const nails = find_line(in.pet.finish, FinishPart::nails);
  if (nails != nullptr && affirms(nails->words.value, "grind")) {
    add(&NoiseWords::grinder, nails->span, "grinder", {});
  }
  if (!in.pet.bath.none && read_dryer(in.drying.words).force) {
    add(&NoiseWords::dryer, in.drying.span, "dryer", {});
  }
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
  find_noise(in, found);
  find_felt(in, found);
  std::ranges::move(found, std::back_inserter(all));
}
}  // namespace furnish
