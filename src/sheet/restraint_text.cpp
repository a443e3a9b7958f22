#include "sheet/restraint_text.h"

#include <algorithm>
#include <string>

#include "base/text.h"
#include "plan/cautions.h"
#include "sheet/alerts.h"
#include "sheet/caution_words.h"
#include "sheet/own_words.h"
#include "sheet/terms.h"
#include "sheet/trim_lines.h"

namespace furnish {
namespace {
constexpr const char* no_break = "\u00A0";

/// Those of a line that an advice is about, or what of them; empty if it is about all of them. Of a
/// line that has none, all that the advice is about.
std::vector<Place> narrowed(const Matter& matter, const CautionText& advice,
                            std::span<const Place> places) {
  std::vector<Place> out;
  if (places.empty()) {
    for (const Caution& one : matter.cautions) {
      if (one.instead == advice) out.insert(out.end(), one.places.begin(), one.places.end());
    }
    return out;
  }
  bool all = true;
  for (const Place place : places) {
    bool whole = false;
    for (const Caution& one : matter.cautions) {
      if (one.instead != advice) continue;
      for (const Place about : one.places) {
        if (!meets(about, place)) continue;
        whole = whole || about.side == Side::both || about == place;
        const Place both = about.side == Side::both ? place : about;
        if (std::ranges::find(out, both) == out.end()) out.push_back(both);
      }
    }
    all = all && whole;
  }
  return all ? std::vector<Place>() : out;
}

/// What to do; of what a visit found there, first what it is.
std::string to_do(const Matter& matter, const CautionText& advice, const SheetVoice& voice) {
  std::vector<std::string> seen;
  for (const Caution& one : matter.cautions) {
    if (one.rule != RuleId::found_there || one.instead != advice) continue;
    seen.push_back(salons_words(std::get<FreeText>(one.what.facts.at(1)), voice));
  }
  return (seen.empty() ? "" : joined(seen, comma(voice.words)) + colon(voice.words)) +
         caution_text(advice, voice);
}

/// Where, and what to do there; a place is said again where the advice is about another.
std::string advised(const Matter& matter, std::span<const Place> places, const SheetVoice& voice) {
  std::vector<std::string> out;
  std::vector<Place> before;
  for (const CautionText& advice : matter.instead) {
    std::vector<Place> where = narrowed(matter, advice, places);
    const bool again = !out.empty() && where == before;
    if (where.empty() && !out.empty() && !before.empty()) {
      where.assign(places.begin(), places.end());
    }
    const std::string head =
        again || where.empty() ? "" : grouped_text(where, voice) + colon(voice.words);
    out.push_back(head + to_do(matter, advice, voice));
    before = std::move(where);
  }
  return joined(out, semicolon(voice.words));
}
}  // namespace

std::vector<TextSpan> restraint_text(std::span<const Matter> found, std::span<const Place> places,
                                     const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  std::vector<TextSpan> out;
  for (const Matter& matter : found) {
    if (!out.empty()) out.push_back({semicolon(voice.words)});
    out.push_back({signal_word(matter.gravest(), voice.words) + no_break, Face::bold});
    out.push_back({advised(matter, places, voice), Face::semibold});
  }
  return out;
}

std::vector<TextSpan> restraint_words(std::span<const Matter> found, const SheetDesk& desk) {
  const Words& words = desk.voice.words;
  std::vector<TextSpan> out;
  for (const Matter& matter : found) {
    TextSpan span{signal_word(matter.gravest(), words), Face::bold};
    if (std::ranges::find(out, span.text, &TextSpan::text) != out.end()) continue;
    if (!out.empty()) out.push_back({comma(words)});
    out.push_back(std::move(span));
  }
  return out;
}
}  // namespace furnish
