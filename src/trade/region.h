#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace furnish {

/// A part of the coat that is trimmed to one length, named as in kennel clubs' and veterinary
/// glossaries. The order is that of rows on paper: head, body, underline, legs, the rest.
enum class Region : std::uint8_t {
  muzzle,
  cheeks,
  crown,
  throat,
  ears,
  eyes,
  neck,
  ruff,
  shoulders,
  back,
  sides,
  loin,
  rump,
  chest,
  belly,
  tuck_up,
  front_legs,
  rear_legs,
  hocks,
  fringe,
  breeches,
  tail,
  feet,
  pads,
  sanitary,
};
inline constexpr std::size_t region_count = 25;

/// The dog's own left and right.
enum class Side : std::uint8_t { both, left, right };

/// How the dog stands, or is held, while a region is worked on.
enum class Stance : std::uint8_t { standing, facing, from_behind, foot_lifted, forelegs_lifted };

/// A named set of regions. A region may be in two of them (ears: head and furnishings).
enum class Group : std::uint8_t { head, body, under, legs, furnishings };
inline constexpr std::size_t group_count = 5;

struct RegionInfo {
  Region region;
  std::string_view key;   ///< as written in files: "tuck-up"
  std::string_view one;   ///< one of a pair: "hock"; the same as `name` for the rest
  std::string_view name;  ///< on paper: "front legs"
  bool paired;            ///< a left and a right one that may be trimmed apart
  bool thin_skin;         ///< thin, folded or mobile skin, where skip teeth catch
  Stance stance;
  double natural;  ///< natural length here, as a share of the coat's on the back; common practice,
                   ///< no source
};

/// Total over Region.
const RegionInfo& info(Region);
std::span<const RegionInfo> regions();  ///< in order of the enumeration
std::string_view key(Region);
std::string_view name(Region);

struct GroupInfo {
  Group group;
  std::string_view key;
  std::span<const Region> members;
};
const GroupInfo& info(Group);
std::span<const GroupInfo> groups();
std::optional<Group> parse_group(std::string_view word);
/// True if the group takes the region in.
bool in_group(Region, Group);

/// A region, or one side of a paired one.
struct Place {
  Region region{};
  Side side = Side::both;
  friend constexpr auto operator<=>(Place, Place) = default;
};

/// "hocks", "left hock", "left-hock", "tuck-up", "front legs": one or many, with hyphens, spaces or
/// underscores. Empty if it is no region, or a side of a region that is not paired and `any_side`
/// is not set (a finding may be on the left of the belly; a trim is not).
enum class AnySide : bool { no, yes };
std::optional<Place> parse_place(std::string_view words, AnySide any_side = AnySide::no);
std::optional<Side> parse_side(std::string_view word);
/// "left hock", "hocks", "belly, left".
std::string to_text(Place);
std::string_view to_text(Side);
/// True if the two share any coat: the same region and not opposite sides.
constexpr bool meets(Place a, Place b) {
  return a.region == b.region && (a.side == b.side || a.side == Side::both || b.side == Side::both);
}

/// Two regions that touch, where a step in length shows.
struct Seam {
  Region a, b;
  friend constexpr auto operator<=>(Seam, Seam) = default;
};
/// Every seam once, a before b, sorted.
std::span<const Seam> seams();
/// Symmetric; false for a region and itself.
bool adjacent(Region, Region);

/// All keys that a file may use for a region or group, for suggestions.
std::span<const std::string_view> place_words();
}  // namespace furnish
