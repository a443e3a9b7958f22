#include "trade/region.h"

#include <algorithm>
#include <array>

#include "base/text.h"

namespace furnish {
namespace {
using enum Region;
using enum Stance;

constexpr bool pair = true, single = false, thin = true, firm = false;

constexpr std::array<RegionInfo, region_count> table{{
    {muzzle, "muzzle", "muzzle", "muzzle", single, firm, facing, 0.4},
    {cheeks, "cheeks", "cheek", "cheeks", pair, firm, facing, 0.6},
    {crown, "crown", "crown", "crown", single, firm, facing, 0.6},
    {throat, "throat", "throat", "throat", single, thin, facing, 0.9},
    {ears, "ears", "ear", "ears", pair, thin, facing, 0.7},
    {eyes, "eyes", "eye", "corners of the eyes", pair, thin, facing, 0.2},
    {neck, "neck", "neck", "neck", single, firm, standing, 1.0},
    {ruff, "ruff", "ruff", "ruff", single, firm, standing, 1.6},
    {shoulders, "shoulders", "shoulder", "shoulders", pair, firm, standing, 1.0},
    {back, "back", "back", "back", single, firm, standing, 1.0},
    {sides, "sides", "side", "sides", pair, firm, standing, 1.0},
    {loin, "loin", "loin", "loin", single, firm, standing, 1.0},
    {rump, "rump", "rump", "rump", single, firm, standing, 1.0},
    {chest, "chest", "chest", "chest", single, firm, facing, 1.3},
    {belly, "belly", "belly", "belly", single, thin, forelegs_lifted, 1.1},
    {tuck_up, "tuck-up", "tuck-up", "tuck-up", single, thin, standing, 0.9},
    {front_legs, "front-legs", "front leg", "front legs", pair, firm, standing, 0.6},
    {rear_legs, "rear-legs", "rear leg", "rear legs", pair, firm, standing, 0.8},
    {hocks, "hocks", "hock", "hocks", pair, thin, from_behind, 0.5},
    {fringe, "fringe", "fringe", "fringe of the legs", pair, firm, standing, 1.2},
    {breeches, "breeches", "breech", "breeches", pair, firm, from_behind, 1.6},
    {tail, "tail", "tail", "tail", single, firm, from_behind, 1.8},
    {feet, "feet", "foot", "feet", pair, firm, foot_lifted, 0.4},
    {pads, "pads", "pad", "pads", pair, thin, foot_lifted, 0.3},
    {sanitary, "sanitary", "sanitary area", "sanitary area", single, thin, from_behind, 0.6},
}};

consteval bool in_order() {
  for (std::size_t i = 0; i < table.size(); ++i) {
    if (static_cast<std::size_t>(table[i].region) != i) return false;
  }
  return true;
}
static_assert(in_order(), "one row a region, in the order of the enumeration");

constexpr std::array head_regions{muzzle, cheeks, crown, throat, ears};
constexpr std::array body_regions{neck, shoulders, back, sides, loin, rump};
constexpr std::array under_regions{chest, belly, tuck_up};
constexpr std::array leg_regions{front_legs, rear_legs, hocks};
constexpr std::array furnishing_regions{ears, chest, belly, fringe, breeches, tail};

constexpr std::array<GroupInfo, group_count> group_table{{
    {Group::head, "head", head_regions},
    {Group::body, "body", body_regions},
    {Group::under, "under", under_regions},
    {Group::legs, "legs", leg_regions},
    {Group::furnishings, "furnishings", furnishing_regions},
}};

constexpr std::array seam_table{
    Seam{muzzle, cheeks},      Seam{muzzle, crown},
    Seam{muzzle, throat},      Seam{muzzle, eyes},
    Seam{cheeks, crown},       Seam{cheeks, throat},
    Seam{cheeks, ears},        Seam{cheeks, eyes},
    Seam{cheeks, neck},        Seam{cheeks, ruff},
    Seam{crown, ears},         Seam{crown, eyes},
    Seam{crown, neck},         Seam{throat, neck},
    Seam{throat, ruff},        Seam{throat, chest},
    Seam{ears, neck},          Seam{ears, ruff},
    Seam{neck, ruff},          Seam{neck, shoulders},
    Seam{neck, back},          Seam{neck, chest},
    Seam{ruff, shoulders},     Seam{ruff, chest},
    Seam{shoulders, back},     Seam{shoulders, sides},
    Seam{shoulders, chest},    Seam{shoulders, front_legs},
    Seam{back, sides},         Seam{back, loin},
    Seam{sides, loin},         Seam{sides, belly},
    Seam{sides, tuck_up},      Seam{sides, front_legs},
    Seam{sides, rear_legs},    Seam{loin, rump},
    Seam{loin, tuck_up},       Seam{loin, rear_legs},
    Seam{rump, rear_legs},     Seam{rump, breeches},
    Seam{rump, tail},          Seam{chest, belly},
    Seam{chest, front_legs},   Seam{belly, tuck_up},
    Seam{belly, front_legs},   Seam{belly, sanitary},
    Seam{tuck_up, rear_legs},  Seam{tuck_up, sanitary},
    Seam{front_legs, fringe},  Seam{front_legs, feet},
    Seam{rear_legs, hocks},    Seam{rear_legs, breeches},
    Seam{rear_legs, sanitary}, Seam{hocks, breeches},
    Seam{hocks, feet},         Seam{breeches, tail},
    Seam{breeches, sanitary},  Seam{tail, sanitary},
    Seam{feet, pads},
};
static_assert(std::ranges::is_sorted(seam_table));
static_assert(std::ranges::adjacent_find(seam_table) == seam_table.end());
static_assert(std::ranges::all_of(seam_table, [](Seam s) { return s.a < s.b; }));

constexpr auto words = [] {
  std::array<std::string_view, region_count + group_count> out{};
  for (std::size_t i = 0; i < region_count; ++i) out[i] = table[i].key;
  for (std::size_t i = 0; i < group_count; ++i) out[region_count + i] = group_table[i].key;
  return out;
}();

/// Lower case, hyphens and underscores as spaces.
std::string normal(std::string_view word) {
  std::string out = lower_ascii(trimmed(word));
  std::ranges::replace(out, '-', ' ');
  std::ranges::replace(out, '_', ' ');
  return out;
}

std::optional<Region> parse_region(std::string_view normal_word) {
  for (const RegionInfo& row : table) {
    if (normal_word == normal(row.key) || normal_word == normal(row.one) ||
        normal_word == row.name) {
      return row.region;
    }
  }
  return std::nullopt;
}
}  // namespace

const RegionInfo& info(Region region) {
  return table[static_cast<std::size_t>(region)];
}
std::span<const RegionInfo> regions() {
  return table;
}
std::string_view key(Region region) {
  return info(region).key;
}
std::string_view name(Region region) {
  return info(region).name;
}

const GroupInfo& info(Group group) {
  return group_table[static_cast<std::size_t>(group)];
}
std::span<const GroupInfo> groups() {
  return group_table;
}
std::optional<Group> parse_group(std::string_view word) {
  const std::string wanted = normal(word);
  for (const GroupInfo& row : group_table) {
    if (row.key == wanted) return row.group;
  }
  return std::nullopt;
}
bool in_group(Region region, Group group) {
  return std::ranges::find(info(group).members, region) != info(group).members.end();
}

std::optional<Side> parse_side(std::string_view word) {
  const std::string wanted = normal(word);
  if (wanted == "left") return Side::left;
  if (wanted == "right") return Side::right;
  if (wanted == "both") return Side::both;
  return std::nullopt;
}

std::optional<Place> parse_place(std::string_view written, AnySide any_side) {
  const std::string all = normal(written);
  if (const auto whole = parse_region(all)) return Place{*whole, Side::both};
  const std::size_t space = all.find(' ');
  if (space == std::string::npos) return std::nullopt;
  const auto side = parse_side(all.substr(0, space));
  const auto region = parse_region(trimmed(std::string_view(all).substr(space)));
  if (!side || !region) return std::nullopt;
  if (*side != Side::both && !info(*region).paired && any_side == AnySide::no) return std::nullopt;
  return Place{*region, *side};
}

std::string_view to_text(Side side) {
  return side == Side::left ? "left" : side == Side::right ? "right" : "both";
}

std::string to_text(Place place) {
  const RegionInfo& row = info(place.region);
  if (place.side == Side::both) return std::string(row.name);
  if (row.paired) return std::string(to_text(place.side)) + " " + std::string(row.one);
  return std::string(row.name) + ", " + std::string(to_text(place.side));
}

std::span<const Seam> seams() {
  return seam_table;
}
bool adjacent(Region a, Region b) {
  return std::ranges::binary_search(seam_table, a < b ? Seam{a, b} : Seam{b, a});
}
std::span<const std::string_view> place_words() {
  return words;
}
}  // namespace furnish
