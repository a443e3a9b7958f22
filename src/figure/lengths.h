#pragma once

#include <array>
#include <optional>

#include "figure/figure.h"

namespace furnish {

/// Length drawn in every region: the middle of what is left; where the plan says nothing, coats
/// that keep growing follow the neighbour they are trimmed with (fringe as front legs, ruff as
/// neck), and whatever is left has its natural length.
std::array<Length, region_count> drawn_lengths(const FigureInput&);

/// Height at the withers for a weight: 175 mm times the cube root of kilograms. Common practice, no
/// source (4.6 kg gives 29 cm, 30 kg 54 cm, 60 kg 69 cm). 12 kg if it is unknown.
Length withers_height(std::optional<Mass>);

/// Units of the figure that a millimetre of coat is drawn with: 100 units to the withers' height,
/// but as on a dog of at least 26 and at most 52 cm. So the coat of a giant still shows (one of 60
/// kg is drawn a third longer than it is), and that of a tiny dog does not hide it.
double coat_scale(std::optional<Mass>);
}  // namespace furnish
