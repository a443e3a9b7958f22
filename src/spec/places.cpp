#include "spec/places.h"

#include <fmt/format.h>

#include "base/text.h"
#include "spec/values.h"

namespace furnish {

namespace {
/// For a word that begins with a side, what it may have meant: "left hok".
std::string sided_hint(std::string_view word) {
  const std::size_t gap = word.find_first_of(" -_");
  if (gap == std::string_view::npos) return {};
  const auto side = parse_side(word.substr(0, gap));
  if (!side || *side == Side::both) return {};
  std::vector<std::string_view> names;
  for (const RegionInfo& row : regions()) {
    if (!row.paired) continue;
    names.push_back(row.one);
    names.push_back(row.name);
  }
  const auto near = nearest(lower_ascii(word.substr(gap + 1)), names);
  if (!near) return {};
  return fmt::format("did you mean '{} {}'?", to_text(*side), *near);
}
}  // namespace

std::optional<NamedPlaces> read_places(std::string_view word, SourceSpan at, AnySide any_side,
                                       std::span<const std::string_view> others,
                                       DiagnosticSink& sink) {
  if (const auto place = parse_place(word, any_side)) return NamedPlaces{{*place}, false};
  if (const auto group = parse_group(word)) {
    NamedPlaces out{{}, true};
    for (const Region region : info(*group).members) out.places.push_back({region, Side::both});
    return out;
  }
  if (const auto sided = parse_place(word, AnySide::yes)) {
    sink.error("no-sides", at,
               fmt::format("the {} has no left and right to trim apart", name(sided->region)))
        .hint = fmt::format("write '{}'", key(sided->region));
    return std::nullopt;
  }
  std::vector<std::string_view> words(others.begin(), others.end());
  for (const std::string_view place : place_words()) {
    if (std::ranges::find(words, place) == words.end()) words.push_back(place);
  }
  Diagnostic& fault = report_unknown("unknown-region", at, "region or group", word, words, sink);
  if (std::string hint = sided_hint(word); !hint.empty()) fault.hint = std::move(hint);
  return std::nullopt;
}

void report_conflict(const GroupConflict& conflict, DiagnosticSink& sink) {
  std::vector<std::string> names, keys;
  for (const Region region : conflict.regions) {
    names.emplace_back(name(region));
    keys.push_back(fmt::format("'{}'", key(region)));
  }
  Diagnostic& fault =
      sink.error("groups-disagree", conflict.second_span,
                 fmt::format("'{}' and '{}' both take in the {}, and say different things",
                             conflict.first, conflict.second, listed(names)));
  fault.notes.emplace_back(conflict.first_span, fmt::format("'{}' is here", conflict.first));
  fault.hint = fmt::format("name {} on {} own: what is named itself wins over its group",
                           listed(keys), keys.size() == 1 ? "its" : "their");
}

void report_place_twice(Place place, std::string_view first, SourceSpan first_span,
                        std::string_view again, SourceSpan again_span, DiagnosticSink& sink) {
  sink.error("region-twice", again_span,
             fmt::format("'{}' is given twice: '{}' and '{}' are one place", to_text(place), first,
                         again))
      .notes.emplace_back(first_span, "first given here");
}
}  // namespace furnish
