#pragma once

#include <algorithm>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/diagnostic.h"
#include "spec/document.h"
#include "spec/fields.h"
#include "trade/region.h"

namespace furnish {

/// What a word names: one place, or the regions of a group.
struct NamedPlaces {
  std::vector<Place> places;
  bool group = false;
};

/// "hocks", "left hock", "legs". Empty after a fault at `at`; `others` are words that may stand
/// there too, for the suggestion; `no_place` goes behind the hint for a word that is near to none.
std::optional<NamedPlaces> read_places(std::string_view word, SourceSpan at, AnySide,
                                       std::span<const std::string_view> others, DiagnosticSink&,
                                       std::string_view no_place = {});

/// The same of a key in a table of places; where it belongs into another section of the file, the
/// hint says so.
std::optional<NamedPlaces> read_key_places(const TomlEntry&, AnySide,
                                           std::span<const std::string_view> others,
                                           const Fields& table);

/// Something said about a word's places.
template <typename T>
struct Said {
  NamedPlaces where;
  T value;
  std::string written;
  SourceSpan span;  ///< of the word
};

/// Two groups that say different things about the same regions.
struct GroupConflict {
  std::string first, second;
  SourceSpan first_span, second_span;
  std::vector<Region> regions;
};
void report_conflict(const GroupConflict&, DiagnosticSink&);
void report_place_twice(Place, std::string_view first, SourceSpan first_span,
                        std::string_view again, SourceSpan again_span, DiagnosticSink&);

/// Spreads groups over their regions, in order of place, each place once: a region named itself
/// wins over its group; its sides stand beside it. The same place named twice is a fault, and so
/// are two groups that say different things about a region which is not named itself.
template <typename T, typename Same>
std::vector<std::pair<Place, T>> spread(const std::vector<Said<T>>& all, Same same,
                                        DiagnosticSink& sink) {
  std::map<Place, const Said<T>*> placed;
  for (const Said<T>& said : all) {
    if (said.where.group) continue;
    const Place place = said.where.places.front();
    const auto [at, fresh] = placed.try_emplace(place, &said);
    if (fresh) continue;
    report_place_twice(place, at->second->written, at->second->span, said.written, said.span, sink);
  }
  const std::map<Place, const Said<T>*> named = placed;
  std::vector<std::pair<std::pair<const Said<T>*, const Said<T>*>, GroupConflict>> conflicts;
  for (const Said<T>& said : all) {
    if (!said.where.group) continue;
    for (const Place place : said.where.places) {
      if (named.contains(place)) continue;
      if (named.contains({place.region, Side::left}) && named.contains({place.region, Side::right}))
        continue;
      const auto [at, fresh] = placed.try_emplace(place, &said);
      if (fresh || same(at->second->value, said.value)) continue;
      const std::pair both(at->second, &said);
      auto known = std::ranges::find_if(conflicts, [&](const auto& c) { return c.first == both; });
      if (known == conflicts.end()) {
        const Said<T>& first = *at->second;
        known = conflicts.insert(known,
                                 {both, {first.written, said.written, first.span, said.span, {}}});
      }
      known->second.regions.push_back(place.region);
    }
  }
  for (const auto& conflict : conflicts) report_conflict(conflict.second, sink);
  std::vector<std::pair<Place, T>> out;
  for (const auto& [place, said] : placed) out.emplace_back(place, said->value);
  return out;
}
}  // namespace furnish
