#pragma once

#include <array>
#include <optional>
#include <vector>

#include "figure/hair.h"
#include "figure/polygon.h"

namespace furnish {
struct Drawing;

/// The coated parts areas are made from.
struct CoatedParts {
  const Furred &body, &front, &rear, &tail, &fall, &ear;
};

/// Where each region is seen on the near side, with its coat: the part of the skin nearest to the
/// region's own lines, and the hair that grows there. No two share a point.
/// With `only`, areas of all other regions stay empty, which saves most of the time.
std::array<Shape, region_count> areas_of(
    const Build&, const CoatedParts&, const Drawing&,
    const std::optional<std::vector<Region>>& only = std::nullopt);

/// A point in the middle of a region on the bare dog, for build; where callouts and spots point
/// when it lies in the region's area.
Vec middle_of(Region, const Build&);
}  // namespace furnish
