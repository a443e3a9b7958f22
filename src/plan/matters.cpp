#include "plan/matters.h"

#include <algorithm>
#include <optional>

namespace furnish {
namespace {
bool within(std::span<const Place> inner, std::span<const Place> outer) {
  return !inner.empty() && std::ranges::all_of(inner, [&](Place one) {
    return std::ranges::any_of(outer, [&](Place other) {
      return other.region == one.region && (other.side == Side::both || other.side == one.side);
    });
  });
}

bool about_drying(const Caution& one) {
  return one.rule == RuleId::dryer_face || one.rule == RuleId::dryer_heat ||
         one.rule == RuleId::dryer_seizure || one.what.key == "noise-dryer" ||
         one.what.key == "against-handling-dryer";
}

/// The product that a caution is about; null if about none.
const std::string* product_of(const Caution& one) {
  const bool has_one = one.rule == RuleId::allergen || one.rule == RuleId::dwell_short ||
                       one.rule == RuleId::mix_age;
  return has_one ? &std::get<std::string>(one.what.facts.front()) : nullptr;
}

bool one_matter(const Caution& a, const Caution& b) {
  if (a.rule == b.rule && a.instead == b.instead) return true;
  if (within(a.places, b.places) || within(b.places, a.places)) return true;
  if (about_drying(a) && about_drying(b)) return true;
  const std::string *const one = product_of(a), *const other = product_of(b);
  return one != nullptr && other != nullptr && *one == *other;
}

/// Nobody works there: no other advice about the place holds beside it.
bool hands_off(const Caution& one) {
  return one.rule == RuleId::avoid_region || one.rule == RuleId::mat_wound ||
         (one.rule == RuleId::thin_skin && one.what.key != "thin-skin");
}

/// How strict a rule is that advises another tool, strictest first; empty if it advises none. Two
/// such advices about a place could name two tools: the stricter one counts.
std::optional<int> strictness(RuleId id) {
  switch (id) {
    case RuleId::against_handling:
      return 0;
    case RuleId::sanitary_blade:
      return 1;
    case RuleId::thin_skin:
      return 2;
    case RuleId::pads_blade:
    case RuleId::double_coat_short:
    case RuleId::close_blade:
    case RuleId::skip_tooth:
      return 3;
    case RuleId::comb_on_mats:
    case RuleId::comb_base:
      return 4;
    default:
      return std::nullopt;
  }
}

/// The same sentence about other places is one sentence about all of them.
void add_what(std::vector<CautionText>& all, const CautionText& one) {
  for (CautionText& other : all) {
    if (other == one) return;
    if (other.key != one.key || one.facts.empty()) continue;
    auto* const places = std::get_if<std::vector<Place>>(&other.facts.front());
    const auto* const more = std::get_if<std::vector<Place>>(&one.facts.front());
    const auto rest = [](const CautionText& text) { return std::span(text.facts).subspan(1); };
    if (places == nullptr || more == nullptr || !std::ranges::equal(rest(other), rest(one))) {
      continue;
    }
    places->insert(places->end(), more->begin(), more->end());
    std::ranges::sort(*places);
    const auto twice = std::ranges::unique(*places);
    places->erase(twice.begin(), twice.end());
    return;
  }
  all.push_back(one);
}

/// True if `other` says all that is to be done where `one` is.
bool taken_back(const Caution& one, const Caution& other) {
  if (!within(one.places, other.places)) return false;
  if (hands_off(other)) return !hands_off(one);
  const auto own = strictness(one.rule), others = strictness(other.rule);
  return own && others && *others < *own;
}

/// The caution whose advice holds for one: its own, if no other takes that back.
const Caution& advising(const Caution& one, const Matter& matter) {
  const Caution* out = &one;
  // Each that takes another's back is stricter than it, so there is an end.
  for (std::size_t n = 0; n < matter.cautions.size(); ++n) {
    const auto stricter = std::ranges::find_if(
        matter.cautions, [&](const Caution& other) { return taken_back(*out, other); });
    if (stricter == matter.cautions.end()) break;
    out = &*stricter;
  }
  return *out;
}

/// Hazards with one advice are named before it; where it says "it", each has its own.
void add_advice(std::vector<Advice>& all, const CautionText& what, const CautionText& instead,
                bool apart) {
  const auto same = std::ranges::find_if(
      all, [&](const Advice& one) { return !apart && one.instead == instead; });
  if (same == all.end()) {
    all.push_back({{what}, instead});
  } else {
    add_what(same->what, what);
  }
}

void set_texts(Matter& matter) {
  for (const Caution& one : matter.cautions) {
    add_what(matter.what, one.what);
    const CautionText& instead = advising(one, matter).instead;
    add_advice(matter.advice, one.what, instead, one.rule == RuleId::found_there);
    if (std::ranges::find(matter.instead, instead) == matter.instead.end()) {
      matter.instead.push_back(instead);
    }
  }
}
}  // namespace

std::vector<Matter> matters(std::span<const Caution> cautions) {
  std::vector<Matter> out;
  for (const Caution& one : cautions) {
    const auto same = std::ranges::find_if(out, [&](const Matter& matter) {
      return std::ranges::any_of(matter.cautions,
                                 [&](const Caution& other) { return one_matter(one, other); });
    });
    Matter& into = same != out.end() ? *same : out.emplace_back();
    into.cautions.push_back(one);
  }
  for (Matter& one : out) set_texts(one);
  return out;
}
}  // namespace furnish
