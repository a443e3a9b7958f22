#pragma once

#include <array>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/measures.h"
#include "figure/hatching.h"
#include "figure/shading.h"
#include "model/pet.h"
#include "page/block.h"
#include "trade/coat.h"
#include "trade/finish.h"
#include "trade/region.h"

namespace furnish {

/// A numbered disc beside the figure, for one row of the table of regions.
struct FigureCallout {
  int number = 0;
  std::vector<Region> regions;  ///< of the row, the most telling first; at least one
  bool differs = false;         ///< white on black
  std::string row;              ///< id of the row to lead to; empty for no link
  std::string says{};           ///< where the link leads, in words
};

enum class SpotKind : std::uint8_t {
  avoid,    ///< no tool may touch: cross-hatched, with a struck circle
  finding,  ///< seen at a visit: a square with a letter
  sore      ///< touch gently: a triangle with an exclamation mark
};

/// What stands for the first, second … of the findings, in the figure and in the text: rows have
/// numbers, so findings have letters, A to Z, then AA. pre: number > 0
std::string finding_letter(int number);

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
  /// Fields of the dog told apart without colour, as a care sheet shows how often each is brushed;
  /// in place of what a region is worked on with. See shading.h for their key.
  std::array<std::optional<Shade>, region_count> shades{};
  bool friction = false;  ///< marks the places where mats begin, see friction.h
  TailEnd tail_end = TailEnd::natural;
  std::vector<Seam> stepped;  ///< seams that show as a step; all others are blended
  std::vector<FigureCallout> callouts;
  std::vector<FigureSpot> spots;
  Side side = Side::left;  ///< the side seen; left looks left, right looks right
  std::string alt;         ///< what the figure shows, in words
};

/// The dog as it is drawn: its build and its coat, without callouts, spots or side. It takes most
/// of a figure's time, so figures of one dog share it.
class DrawnDog;
using DrawnDogPtr = std::shared_ptr<const DrawnDog>;
enum class Detail : std::uint8_t {
  full,  ///< for dog_figure()
  small  ///< outlines and the spots' regions alone, for small_dog_figure(); far quicker
};
DrawnDogPtr draw_dog(const FigureInput&, Detail = Detail::full);
/// How tall it stands where it is so wide.
Length height_of(const DrawnDogPtr&, Length width);

/// Whether the callout's leader ends in a ring, no dot: ear or tail hangs over all its regions.
/// pre: the dog is drawn in full.
bool points_at_covered(const FigureCallout&, const DrawnDogPtr&);

/// The dog, from the side, wearing the trim. Stands in the middle of its column, grows with spare
/// room from `least` to `most` height.
/// pre: drawn in full, of an input with the same build, coat, weight and lengths.
BlockPtr dog_figure(FigureInput, DrawnDogPtr, Length least, Length most, int stretch, Origin = {});

/// The dog about 30 mm wide, for a card: its outline, with nothing on it but the places of the
/// spots seen from its side. They are filled, and their signs stand beside the dog, where they do
/// not hide it, at a size that is read at arm's length. Always `width` wide; callouts, tools and
/// shades are left out.
/// pre: as for dog_figure(), but drawn with any detail, and of an input with the same spots.
BlockPtr small_dog_figure(FigureInput, DrawnDogPtr, Length width, Origin = {});
}  // namespace furnish
