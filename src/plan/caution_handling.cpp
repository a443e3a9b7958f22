#include <algorithm>
#include <array>
#include <iterator>
#include <string_view>

#include "plan/caution_rules.h"
#include "plan/handling_rules.h"
#include "plan/places.h"
#include "trade/dryer.h"
#include "trade/mats.h"
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

/// Where nails are to be ground; null if they are not.
const FinishLine* ground_nails(const Pet& pet) {
  static const PhraseList grinds(
      std::array<std::string_view, 4>{"grind", "grinder", "grinding", "ground"});
  const FinishLine* const nails = find_line(pet.finish, FinishPart::nails);
  const bool so = nails != nullptr && grinds.first_affirmed(nails->words.value);
  return so ? nails : nullptr;
}

void find_ruled_out_grinder(const CautionInput& in, std::span<const RuledOut> ruled, Found& found) {
  const FinishLine* const nails = ground_nails(in.pet);
  const RuledOut* const line = ruling_out_grinder(ruled);
  if (nails == nullptr || line == nullptr) return;
  Caution caution = make_caution(RuleId::against_handling, nails->span, {"grinder", {line->words}},
                                 {"grinder", {}});
  caution.against = line->span;
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
void find_noise(const CautionInput& in, std::span<const RuledOut> ruled, Found& found) {
  const std::vector<NoisyLine> lines = noisy_lines(in.pet);
  const auto add = [&](bool NoiseWords::*machine, SourceSpan planned, std::string_view variant) {
    const auto line =
        std::ranges::find_if(lines, [&](const NoisyLine& one) { return one.named.*machine; });
    if (line == lines.end()) return;
    Caution caution = make_caution(RuleId::noise, planned, {variant, {line->words}});
    caution.against = line->span;
    found.push_back(std::move(caution));
  };
  const auto clipped = std::ranges::find_if(in.pet.trim, [&](const TrimPart& part) {
    const bool clipper = std::holds_alternative<Clip>(part.entry.tool) ||
                         std::holds_alternative<CombOver>(part.entry.tool);
    return clipper && workable(part.place, in.pet.alerts);
  });
  if (clipped != in.pet.trim.end()) add(&NoiseWords::clipper, clipped->entry.span, "clipper");
  const FinishLine* const nails = ground_nails(in.pet);
  if (nails != nullptr && ruling_out_grinder(ruled) == nullptr) {
    add(&NoiseWords::grinder, nails->span, "grinder");
  }
  if (!in.pet.bath.none && read_dryer(in.drying.words).force) {
    add(&NoiseWords::dryer, in.drying.span, "dryer");
  }
}

/// Felt that the plan does not clip, or for which nobody has decided yet whether the clipper or the
/// water comes first. What is matted to the skin over most of the body is clipped like felt, and is
/// not called so.
void find_felt(const CautionInput& in, Found& found) {
  if (in.pet.bath.none) return;
  const bool decided = in.pet.bath.when || in.salon.felted;
  std::vector<Place> felted, to_skin;
  for (const Place place : felted_places(in.latest)) {
    const TrimPart* const part = find_part(in.pet.trim, place);
    const bool planned =
        part != nullptr && (part->entry.before_bath || (decided && clips(part->entry.tool)));
    if (planned) continue;
    (mats_at(in.latest, place) >= worst_mats ? felted : to_skin).push_back(place);
  }
  const bool no_bath_line = in.pet.bath.span.file == SourceSpan::no_file;
  const SourceSpan span = no_bath_line ? in.pet.span : in.pet.bath.span;
  const auto add = [&](std::string_view variant, const std::vector<Place>& places) {
    if (places.empty()) return;
    Caution caution =
        make_caution(RuleId::felted_coat, span, {variant, {places, in.latest->date.value}},
                     {decided ? "decided" : "", {}});
    caution.places = places;
    found.push_back(std::move(caution));
  };
  add("", felted);
  add("to-skin", to_skin);
}
}  // namespace

void find_handling_cautions(const CautionInput& in, Found& all) {
  const std::vector<RuledOut> ruled = ruled_out(in.pet);
  Found found;
  find_ruled_out_tools(in, ruled, found);
  find_ruled_out_drying(in, found);
  find_ruled_out_grinder(in, ruled, found);
  find_noise(in, ruled, found);
  find_felt(in, found);
  std::ranges::move(found, std::back_inserter(all));
}
}  // namespace furnish
