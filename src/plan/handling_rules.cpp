#include "plan/handling_rules.h"

#include <algorithm>
#include <string_view>

#include "trade/phrases.h"

namespace furnish {
namespace {
bool rules_out(const DryerWords& words) {
  return words.no_force || words.no_heated || words.no_cage;
}

bool against(const DryerWords& planned, const DryerWords& ruled) {
  return (ruled.no_force && planned.force) || (ruled.no_heated && planned.heated) ||
         (ruled.no_cage && planned.cage);
}

/// What a list of dislikes names is not wanted, whether it says so or not.
DryerWords disliked(std::string_view words) {
  DryerWords out = read_dryer(words);
  out.no_force = out.no_force || out.force;
  out.no_heated = out.no_heated || out.heated;
  out.no_cage = out.no_cage || out.cage;
  return out;
}
}  // namespace

std::vector<RuledOut> ruled_out(const Pet& pet) {
  std::vector<RuledOut> out;
  const auto add = [&](const std::string& words, SourceSpan span, Refusing how) {
    const bool rules = how == Refusing::rules;
    RuledOut one{words, span, read_refusals(words, how),
                 rules ? read_dryer(words) : disliked(words), refuses_grinder(words, how)};
    if (one.tools.empty() && !rules_out(one.dryer) && !one.grinder) return false;
    out.push_back(std::move(one));
    return true;
  };
  const Handling& handling = pet.handling;
  add(handling.hold, handling.hold_span, Refusing::rules);
  add(handling.lift, handling.lift_span, Refusing::rules);
  add(handling.dryer, handling.dryer_span, Refusing::rules);
  add(handling.stop, handling.stop_span, Refusing::rules);
  for (const std::string& words : pet.preferences.dislikes) {
    add(words, pet.preferences.dislikes_span, Refusing::dislikes);
  }
  const auto add_text = [&](const std::string& text, SourceSpan span) {
    bool any = false;
    for (const std::string_view one : sentences_in(text)) {
      any = add(std::string(one), span, Refusing::rules) || any;
    }
    // "Force dryer? Never.": no sentence of it says so alone.
    if (!any) add(text, span, Refusing::rules);
  };
  for (const Alert& alert : pet.alerts) {
    for (const FreeText* const text : {&alert.text, &alert.action}) {
      add_text(text->value, alert.span);
      for (const FreeText::In& other : text->others) add_text(other.text, alert.span);
    }
  }
  return out;
}

const RuledOut* ruling_out(std::span<const RuledOut> all, const Tool& tool, Place place) {
  const auto found = std::ranges::find_if(all, [&](const RuledOut& one) {
    return std::ranges::any_of(
        one.tools, [&](const Refusal& refusal) { return refuses(refusal, tool, place); });
  });
  return found == all.end() ? nullptr : &*found;
}

const RuledOut* ruling_out_grinder(std::span<const RuledOut> all) {
  const auto found = std::ranges::find_if(all, &RuledOut::grinder);
  return found == all.end() ? nullptr : &*found;
}

PoseWords pose(const Pet& pet) {
  PoseWords out;
  const auto read = [&](std::string_view words, bool of_the_dog) {
    if (words.empty()) return;
    const PoseWords said = read_pose(words);
    out.lies = out.lies || (of_the_dog && said.lies);
    out.feet_low = out.feet_low || said.feet_low;
  };
  read(pet.handling.hold, true);
  read(pet.handling.lift, true);
  for (const Alert& alert : pet.alerts) read(alert.action.value, true);
  for (const TrimPart& part : pet.trim) read(part.entry.note, false);
  return out;
}

Drying drying(const Pet& pet, std::span<const RuledOut> all) {
  const Handling& handling = pet.handling;
  const bool bath_says = pet.bath.dry.has_value();
  Drying out{bath_says ? pet.bath.dry->value : handling.dryer,
             bath_says ? pet.bath.dry->span : handling.dryer_span,
             false,
             {},
             {}};
  const DryerWords planned = read_dryer(out.words);
  for (const RuledOut& one : all) {
    if (!against(planned, one.dryer)) continue;
    return {one.words, one.span, true, out.words, out.span};
  }
  // The bath's own line may be the stricter of the two.
  if (bath_says && against(read_dryer(handling.dryer), planned)) {
    return {out.words, out.span, true, handling.dryer, handling.dryer_span};
  }
  return out;
}
}  // namespace furnish
