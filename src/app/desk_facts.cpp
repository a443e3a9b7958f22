#include "app/desk_facts.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <nlohmann/json.hpp>
#include <numeric>

#include "base/said_in.h"
#include "base/text.h"
#include "page/direction.h"
#include "sheet/shown.h"
#include "sheet/terms.h"
#include "sheet/trim_lines.h"
#include "spec/word_tables.h"
#include "trade/stock.h"

namespace furnish {
namespace {
using Json = nlohmann::ordered_json;

/// In the order of StockKind.
constexpr std::array<const char*, 9> stock_kinds{
    "finding", "advice", "behaviour", "helped", "reason", "not_done", "state", "left", "consent"};

/// The texts of one section as the first catalogue of the chain has each.
Json section(const CatalogueChain& chain, const std::string& name) {
  Json out = Json::object();
  const std::string begin = name + ".";
  for (const Catalogue* const catalogue : chain.catalogues) {
    for (auto it = catalogue->texts.lower_bound(begin);
         it != catalogue->texts.end() && it->first.starts_with(begin); ++it) {
      const std::string key = it->first.substr(begin.size());
      if (!out.contains(key)) out[key] = it->second.value;
    }
  }
  return out;
}

Json places(const Words& words) {
  Json out = Json::array();
  for (const RegionInfo& one : regions()) {
    Json place{{"name", one.key},      {"label", place_name({one.region, Side::both}, words)},
               {"left", nullptr},      {"right", nullptr},
               {"left_name", nullptr}, {"right_name", nullptr},
               {"sides", one.paired},  {"group", false}};
    if (one.paired) {
      for (const Side side : {Side::left, Side::right}) {
        const std::string which(to_text(side));
        place[which] = place_name({one.region, side}, words);
        place[which + "_name"] = to_text(Place{one.region, side});
      }
    }
    out.push_back(std::move(place));
  }
  for (const GroupInfo& one : groups()) {
    Json members = Json::array();
    for (const Region region : one.members) members.push_back(key(region));
    out.push_back({{"name", one.key},
                   {"label", group_name(one.group, words)},
                   {"left", nullptr},
                   {"right", nullptr},
                   {"left_name", nullptr},
                   {"right_name", nullptr},
                   {"sides", false},
                   {"group", true},
                   {"members", std::move(members)}});
  }
  return out;
}

/// "1/2 in" or "13 mm", as files write it.
std::string comb_word(Length comb) {
  constexpr int parts = 8;
  const int eighths = static_cast<int>(std::lround(comb.in_mm() * parts / 25.4));
  const Length rounded = Length::inches(eighths, parts);
  if (eighths == 0 || std::abs((comb - rounded).um()) > comb_tolerance.um()) {
    return fmt::format("{} mm", comb.in_mm());
  }
  const int common = std::gcd(eighths, parts), whole = eighths / parts;
  const int top = (eighths % parts) / common, bottom = parts / common;
  if (top == 0) return fmt::format("{} in", whole);
  return whole == 0 ? fmt::format("{}/{} in", top, bottom)
                    : fmt::format("{} {}/{} in", whole, top, bottom);
}

/// What of the trade's tools the salon has; where nobody said, all.
void add_tools(const Salon& salon, const SheetVoice& voice, Json& out) {
  const auto owned = [&](const Blade& blade) {
    return !salon.kit || std::ranges::find(salon.kit->blades, &blade) != salon.kit->blades.end();
  };
  out["blades"] = Json::array();
  for (const Blade& blade : blades()) {
    const Length leaves = salon.kit ? salon.kit->length(blade) : blade.length();
    out["blades"].push_back({{"id", blade.name},
                             {"leaves", shown(leaves, voice)},
                             {"mm", leaves.in_mm()},
                             {"drawer", owned(blade)}});
  }
  out["combs"] = Json::array();
  const std::span combs = salon.kit ? std::span<const Length>(salon.kit->combs) : guard_combs();
  for (const Length comb : combs) {
    out["combs"].push_back(
        {{"id", comb_word(comb)}, {"leaves", shown_comb(comb, voice)}, {"mm", comb.in_mm()}});
  }
  out["shears"] = Json::array();
  for (const std::string_view word : shears_words()) {
    const auto shears = parse_shears(word);
    const bool there =
        !salon.kit || std::ranges::find(salon.kit->shears, *shears) != salon.kit->shears.end();
    if (there)
      out["shears"].push_back({{"id", word}, {"label", tool_text(Scissor{*shears}, voice)}});
  }
}

/// Whoever is named beside a booking, as first written.
Json groomers(SalonFolder& folder) {
  std::vector<std::string> out;
  const auto* const days = folder.day_files();
  if (days == nullptr) return Json::array();
  for (const std::string& name : *days) {
    const Day* const day = folder.day(name);
    if (day == nullptr) continue;
    for (const Booking& one : day->bookings) {
      if (!one.groomer.empty() && std::ranges::find(out, one.groomer) == out.end()) {
        out.push_back(one.groomer);
      }
    }
  }
  return out;
}
}  // namespace

Json desk_facts(DeskShop& kept) {
  Workshop& shop = kept.shop();
  SalonFolder& folder = shop.folder(kept.root());
  const Salon& salon = folder.salon();
  const std::string language = folder.words().has(salon.language) ? salon.language : "en";
  Json out;
  out["salon"] = {{"name", salon.name},
                  {"language", salon.language},
                  {"units", words::word(words::units, salon.units)},
                  {"today", to_iso(shop.today())},
                  {"groomers", groomers(folder)},
                  {"good", folder.good()}};
  out["language"] = language;
  out["dir"] = right_to_left(language) ? "rtl" : "ltr";
  out["words"] = Json::object();
  if (const auto chain = folder.words().chain(language)) out["words"] = section(*chain, "desk");
  out["languages"] = folder.words().languages();
  out["vaccinations"] = Json::array();
  for (const VaccinationRule& one : salon.vaccinations) out["vaccinations"].push_back(one.name);
  out["products"] = Json::array();
  for (const Product& one : salon.products) {
    out["products"].push_back({{"id", one.key}, {"name", one.name}});
  }
  out["styles"] = Json::array();
  for (const std::string& key : folder.styles().keys()) {
    const Style* const style = folder.styles().find(key, {});
    if (style == nullptr) continue;
    out["styles"].push_back(
        {{"id", key},
         {"name", style->name},
         {"looks", style->looks},
         {"own", folder.styles().path(key).starts_with(path_in(kept.root(), "styles"))}});
  }
  FontSet* const fonts = shop.fonts();
  const auto voice =
      fonts ? shop.voices().voice(*fonts, folder, Pet{}, Audience::staff) : std::nullopt;
  out["places"] = Json::array();
  out["rules"] = Json::array();
  out["stock"] = Json::array();
  if (!voice) return out;  // said where a sheet is made
  out["places"] = places(voice->words);
  add_tools(salon, *voice, out);
  for (const SafetyRule& one : safety_rules()) {
    out["rules"].push_back({{"id", one.key}, {"text", one.when}});
  }
  for (const StockPhrase& one : stock_phrases()) {
    const std::string key = stock_key(one.words);
    out["stock"].push_back({{"kind", stock_kinds.at(static_cast<std::size_t>(one.kind))},
                            {"key", key},
                            {"text", without_languages(voice->words.term("stock", key))}});
  }
  return out;
}
}  // namespace furnish
