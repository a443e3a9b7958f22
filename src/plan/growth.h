#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "base/date.h"
#include "base/length.h"
#include "model/pet.h"
#include "model/salon.h"
#include "model/visit.h"
#include "plan/lengths.h"

namespace furnish {

class DiagnosticSink;

enum class RateBasis : std::uint8_t { published, measured };

/// Micrometres of coat a day, both ends.
struct Rate {
  double low = 0, high = 0;
  RateBasis basis = RateBasis::published;
  int measurements = 0;  ///< pairs of what was left and what came back
  int visits = 0;        ///< that those pairs come from
};

/// A region's coat over time.
struct RegionGrowth {
  Place place;
  Date since;        ///< the last visit; today if there was none
  LengthRange left;  ///< measured when it left, else by what was done, else by the trim
  bool left_measured = false;
  Rate rate;
  std::optional<Length> natural;  ///< where it stops; empty if it keeps growing
  LengthRange today;
};

/// Low to high; never shorter on a later day, never over `natural` unless it was left longer.
/// Before `since`: as it was left.
LengthRange length_on(const RegionGrowth&, Date);
/// Days from `since` on which the pessimistic (high) length is still at most `limit`; empty if it
/// never passes it. Negative if it is over from the start.
std::optional<int> days_until_over(const RegionGrowth&, Length limit);

/// Days until coat of length `from` has reached `to` at so many micrometres a day, up to a whole
/// day; 0 if it has; empty if it never does.
std::optional<int> days_to_reach(Length from, Length to, double um_per_day);

/// A row for every part whose length is known, in order of place. The pet's own rate once two
/// visits give a pair (left at one, came back at the next): the region's from three pairs on, else
/// that of all its regions together; the coat's published range before that; no row without either.
/// Least squares through the origin, for no days are no growth. From three pairs on with the 95 %
/// t-interval, at least as wide as a millimetre of reading error. One or two pairs have no usable
/// interval (12.7 standard errors), so half the published range either way, or the two rates
/// themselves where they lie further apart. A pair that came back shorter than it left was trimmed
/// between and is not used, with a warning; nor is one that had reached a length at which the coat
/// stops. `history`: visits on or before today, oldest first.
std::vector<RegionGrowth> growth(const Salon&, const Pet&, std::span<const PartLength>,
                                 std::span<const Visit* const> history, Date today,
                                 DiagnosticSink&);
}  // namespace furnish
