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

using Variants = std::vector<std::string_view>;

/// The sentences of a rule: what is the matter, and what to do instead; "" is the usual one.
struct Sentences {
  Variants what{""}, instead{""};
};

Sentences sentences_of(RuleId id) {
  switch (id) {
    case RuleId::dryer_face:
      return {{"head", "ears"}};
    case RuleId::vaccination:
      return {{"missing", "expired", "not-yet"}};
    case RuleId::skip_tooth:
      return {{""}, {"", "twin"}};
    case RuleId::dwell_short:
      return {{""}, {"", "no-label"}};
    case RuleId::mat_wound:
      return {{"", "past"}, {"", "past"}};
    case RuleId::weight_loss:
      return {{"", "undated"}};
    case RuleId::senior:
    case RuleId::puppy:
      return {{"", "about"}};
    case RuleId::thin_skin:
      return {{"", "mats"}, {"", "mats"}};
    case RuleId::felted_coat:
      return {{"", "to-skin"}, {"", "decided"}};
    case RuleId::comb_on_mats:
      return {{""}, {"", "felt"}};
    case RuleId::noise:
      return {{"clipper", "grinder", "dryer"}};
    case RuleId::against_handling:
      return {{"", "dryer", "grinder"}, {"", "dryer", "grinder"}};
    default:
      return {};
  }
}

std::string key_of_what(RuleId id, std::string_view variant) {
  std::string out(rule(id).key);
  if (!variant.empty()) out += "-" + std::string(variant);
  return out;
}
std::string key_of_instead(RuleId id, std::string_view variant) {
  return key_of_what(id, variant) + "-do";
}

auto rank(const Caution& c) {
  return std::tuple(c.signal, c.rule, c.places, c.span.file, c.span.begin, c.what);
}
}  // namespace

Caution make_caution(RuleId id, SourceSpan span, Saying what, Saying instead) {
  Caution out;
  out.rule = id;
  out.signal = rule(id).signal;
  out.what = {key_of_what(id, what.variant), std::move(what.facts)};
  out.instead = {key_of_instead(id, instead.variant), std::move(instead.facts)};
  out.span = span;
  return out;
}

std::vector<std::string> caution_keys() {
  std::vector<std::string> out;
  for (const SafetyRule& row : safety_rules()) {
    const Sentences all = sentences_of(row.id);
    for (const std::string_view one : all.what) out.push_back(key_of_what(row.id, one));
    for (const std::string_view one : all.instead) out.push_back(key_of_instead(row.id, one));
  }
  return out;
}

std::vector<Caution> cautions(const CautionInput& in) {
  Found found;
  find_tool_cautions(in, found);
  find_bath_cautions(in, found);
  find_health_cautions(in, found);
  find_handling_cautions(in, found);
  find_finding_cautions(in, found);
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

std::string what_text(const Caution& caution, const PlanWords& words) {
  return capitalised(words.caution(caution.what));
}

void report(std::span<const Caution> list, const PlanWords& words, DiagnosticSink& sink,
            std::string_view pets) {
  for (const Caution& one : list) {
    if (one.accepted) continue;
    Diagnostic& said = sink.warning(
        "caution", one.span,
        fmt::format("{} ({}): {}{}", to_text(one.signal), rule(one.rule).key, what_text(one, words),
                    pets.empty() ? "" : fmt::format(" ({})", pets)));
    said.hint = words.caution(one.instead);
    if (one.against.file != SourceSpan::no_file) said.notes.emplace_back(one.against, "said here");
  }
}
}  // namespace furnish
