#include "spec/places.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "base/text.h"
#include "spec/offer.h"
#include "spec/values.h"
#include "trade/place_synonyms.h"

namespace furnish {

namespace {
/// What to write where no place is near.
std::string place_hint(std::string_view word) {
  // Stock phrases know them, but no trim has a length for them.
  if (word == "armpits" || word == "armpit") {
    return "name the one region that is nearest, front-legs, and the armpits in its note, such as "
           "note = \"mats in the armpits\"";
  }
  std::vector<std::string_view> words;
  for (const GroupInfo& group : groups()) words.push_back(group.key);
  return fmt::format("write a region such as 'ears' or 'front-legs', or a group: {}",
                     quoted_list(words));
}

/// True if one letter in four is wrong at most, or three in four stand in it in their order: "tale"
/// is the tail, but "warts" are no waist. What is the matter may be written here by mistake.
bool is_a_slip_of(std::string_view word, std::string_view place) {
  constexpr std::size_t letters = 4;
  if (edit_distance(word, place) <= std::max<std::size_t>(word.size() / letters, 1)) return true;
  std::vector<std::size_t> shared(place.size() + 1);  // in order, by so much of the place
  for (const char c : word) {
    std::size_t before = 0;
    for (std::size_t i = 0; i < place.size(); ++i) {
      const std::size_t both = c == place[i] ? before + 1 : std::max(shared[i], shared[i + 1]);
      before = std::exchange(shared[i + 1], both);
    }
  }
  return shared.back() * letters >= (letters - 1) * word.size();
}

/// For a word that begins with a side, what it may have meant: "left hok".
std::vector<std::string> sided_words(std::string_view word) {
  const std::size_t gap = word.find_first_of(" -_");
  if (gap == std::string_view::npos) return {};
  const auto side = parse_side(word.substr(0, gap));
  if (!side || *side == Side::both) return {};
  const std::string_view one = word.substr(gap + 1);
  if (one == "leg" || one == "legs") {
    return {fmt::format("{} front leg", to_text(*side)),
            fmt::format("{} rear leg", to_text(*side))};
  }
  std::vector<std::string_view> names;
  for (const RegionInfo& row : regions()) {
    if (!row.paired) continue;
    names.push_back(row.one);
    names.push_back(row.name);
  }
  const auto near = nearest(lower_ascii(one), names);
  if (!near) return {};
  return {fmt::format("{} {}", to_text(*side), *near)};
}
}  // namespace

std::optional<NamedPlaces> read_places(std::string_view word, SourceSpan at, AnySide any_side,
                                       std::span<const std::string_view> others,
                                       DiagnosticSink& sink, std::string_view no_place) {
  if (const auto place = parse_place(word, any_side)) return NamedPlaces{{*place}, false};
  if (const auto group = parse_group(word)) {
    NamedPlaces out{{}, true};
    for (const Region region : info(*group).members) out.places.push_back({region, Side::both});
    return out;
  }
  if (const auto place = parse_synonym(word, any_side)) return NamedPlaces{{*place}, false};
  if (const auto several = several_meant(word); !several.empty()) {
    NamedPlaces out{{}, true};
    for (const Region region : several) out.places.push_back({region, Side::both});
    return out;
  }
  if (const auto sided = parse_place(word, AnySide::yes)) {
    const std::string_view whole = key(sided->region);
    offer_choice(
        sink.error("no-sides", at,
                   fmt::format("the {} has no left and right to trim apart", name(sided->region))),
        {&whole, 1});
    return std::nullopt;
  }
  std::vector<std::string_view> words(others.begin(), others.end());
  for (const std::string_view place : place_words()) {
    if (std::ranges::find(words, place) == words.end()) words.push_back(place);
  }
  for (const RegionInfo& row : regions()) {
    for (const std::string_view also : synonyms(row.region)) words.push_back(also);
  }
  Diagnostic& fault = report_unknown("unknown-region", at, "region or group", word, words, sink);
  const std::string plain = lower_ascii(word);
  if (const auto near = nearest(plain, words); !near || !is_a_slip_of(plain, *near))
    only_tell(fault, place_hint(plain).append(no_place));
  const std::vector<std::string> sided = sided_words(word);
  if (!sided.empty()) {
    offer_meant(fault, std::vector<std::string_view>(sided.begin(), sided.end()));
  }
  return std::nullopt;
}

std::optional<NamedPlaces> read_key_places(const TomlEntry& entry, AnySide any_side,
                                           std::span<const std::string_view> others,
                                           const Fields& table) {
  DiagnosticSink said;
  auto where = read_places(entry.key, entry.key_span, any_side, others, said);
  const std::string elsewhere = where_it_belongs(entry.key, table.file(), &table.info());
  if (where || elsewhere.empty()) {
    table.sink().take(said);
    return where;
  }
  table.sink()
      .error("unknown-key", entry.key_span,
             fmt::format("no key '{}' in {}", entry.key, table.name()))
      .hint = elsewhere;
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
