#pragma once

#include <array>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/measures.h"
#include "figure/hatching.h"
#include "model/pet.h"
#include "page/block.h"
#include "trade/coat.h"
#include "trade/region.h"

namespace furnish {

/// A numbered disc beside the figure, for one row of the table of regions.
struct FigureCallout {
  int number = 0;
  std::vector<Region> regions;  ///< of the row, the most telling first; at least one
  bool differs = false;         ///< white on black
  std::string row;              ///< id of the row to lead to; empty for no link
};

enum class SpotKind : std::uint8_t {
  avoid,   ///< no tool may touch: cross-hatched, with a struck circle
  alert,   ///< mind this place: a triangle
  finding  ///< seen at a visit: a numbered square
};

struct FigureSpot {
  Place place;
  SpotKind kind = SpotKind::avoid;
  int number = 0;  ///< of a finding
};

/// All that the dog figure is computed from.
struct FigureInput {
  Build build;
  std::optional<Coat> coat;
  std::optional<Mass> weight;
  /// Coat left by the plan, by region; regions the plan is silent about are worked out, see
  /// drawn_lengths().
  std::array<std::optional<LengthRange>, region_count> left{};
  /// Coat that it came with, by region: drawn as a dashed outline round the dog. Regions without a
  /// length are as they left; all empty for no such outline.
  std::array<std::optional<LengthRange>, region_count> came_in{};
  /// What each region is worked on with, for the hatching; empty leaves it white.
  std::array<std::optional<ToolKind>, region_count> tools{};
  std::vector<Seam> stepped;  ///< seams that show as a step; all others are blended
  std::vector<FigureCallout> callouts;
  std::vector<FigureSpot> spots;
  Side side = Side::left;  ///< the side seen; left looks left, right looks right
  std::string alt;         ///< what the figure shows, in words
};

/// Length drawn in every region: the middle of what is left; where the plan says nothing, coats
/// that keep growing follow the neighbour they are trimmed with (fringe as front legs, ruff as
/// neck), and whatever is left has its natural length.
std::array<Length, region_count> drawn_lengths(const FigureInput&);

/// True if a spot or callout is on one side only, so that one figure cannot show it all.
bool needs_both_sides(const FigureInput&);

/// Height at the withers for a weight: 175 mm times the cube root of kilograms. Common practice, no
/// source (4.6 kg gives 29 cm, 30 kg 54 cm, 60 kg 69 cm). 12 kg if it is unknown.
Length withers_height(std::optional<Mass>);

/// Units of the figure that a millimetre of coat is drawn with: 100 units to the withers' height,
/// but as on a dog of at least 26 and at most 52 cm. So the coat of a giant still shows (one of 60
/// kg is drawn a third longer than it is), and that of a tiny dog does not hide it.
double coat_scale(std::optional<Mass>);

/// The dog as it is drawn: its build and its coat, without callouts, spots or side. It takes most
/// of a figure's time, so figures of one dog share it.
class DrawnDog;
using DrawnDogPtr = std::shared_ptr<const DrawnDog>;
DrawnDogPtr draw_dog(const FigureInput&);

/// The dog, from the side, wearing the trim. Stands in the middle of its column, grows with spare
/// room from `least` to `most` height.
BlockPtr dog_figure(FigureInput, Length least, Length most, int stretch, Origin = {});
/// The same, drawn before. pre: drawn of an input with the same build, coat, weight and lengths.
BlockPtr dog_figure(FigureInput, DrawnDogPtr, Length least, Length most, int stretch, Origin = {});
}  // namespace furnish
