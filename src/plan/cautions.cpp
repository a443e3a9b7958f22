#include "plan/cautions.h"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

#include "base/diagnostic.h"
#include "base/text.h"
#include "plan/caution_rules.h"

namespace furnish {
namespace {
/// The newest acceptance in force; of one day, the first in its file.
std::optional<Acceptance> acceptance_of(RuleId id, const Pet& pet, Date today) {
  std::optional<Acceptance> newest;
  for (const Acceptance& one : pet.accepted) {
    if (one.rule.value != id || one.signed_on > today) continue;
    const bool newer = !newest || one.signed_on > newest->signed_on ||
                       (one.signed_on == newest->signed_on && one.span.begin < newest->span.begin);
    if (newer) newest = one;
  }
  return newest;
}

auto rank(const Caution& c) {
  return std::tuple(c.signal, c.rule, c.places, c.span.file, c.span.begin, c.what);
}
}  // namespace

Caution make_caution(RuleId id, SourceSpan span, Saying what, Saying instead) {
  const SafetyRule& row = rule(id);
  Caution out;
  out.rule = id;
  out.signal = row.signal;
  out.what = what.english.empty() ? std::string(row.what) : std::move(what.english);
  out.instead = instead.english.empty() ? std::string(row.instead) : std::move(instead.english);
  out.what_said = {fmt::format("{}{}", row.key, what.key), std::move(what.facts)};
  out.instead_said = {fmt::format("{}{}-do", row.key, instead.key), std::move(instead.facts)};
  out.span = span;
  return out;
}

std::string places_phrase(const std::vector<Place>& places) {
  std::vector<std::string> names;
  for (const Place place : places) names.push_back(to_text(place));
  return capitalised(listed(names));
}

std::vector<Caution> cautions(const CautionInput& in) {
  Found found;
  find_tool_cautions(in, found);
  find_bath_cautions(in, found);
  find_health_cautions(in, found);
  find_handling_cautions(in, found);
  for (Caution& one : found) one.accepted = acceptance_of(one.rule, in.pet, in.today);
  std::ranges::stable_sort(found, {}, rank);
  return found;
}

std::vector<Acceptance> stale_acceptances(const Pet& pet, std::span<const Caution> list) {
  std::vector<Acceptance> out;
  for (const Acceptance& one : pet.accepted) {
    if (std::ranges::find(list, one.rule.value, &Caution::rule) == list.end()) out.push_back(one);
  }
  std::ranges::stable_sort(out, {}, [](const Acceptance& a) {
    return std::tuple(a.rule.value, a.signed_on, a.span.file, a.span.begin);
  });
  return out;
}

void report(std::span<const Caution> list, DiagnosticSink& sink) {
  for (const Caution& one : list) {
    if (one.accepted) continue;
    Diagnostic& said =
        sink.warning("caution", one.span,
                     fmt::format("{} ({}): {}", to_text(one.signal), rule(one.rule).key, one.what));
    said.hint = one.instead;
    if (one.against.file != SourceSpan::no_file) said.notes.emplace_back(one.against, "said here");
  }
}
}  // namespace furnish
