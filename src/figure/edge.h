#pragma once

#include <cstdint>
#include <vector>

#include "figure/hair.h"
#include "figure/polygon.h"
#include "figure/spline.h"

namespace furnish {

/// How the edge of a coat looks, by its kind.
enum class EdgeForm : std::uint8_t { plain, pointed, scalloped };

/// The outline of a shape as it is drawn: plain where the coat is short or smooth, else in tufts
/// that point where the hair points and never leave the shape. Variation by a fixed seed.
/// `coarse` makes tufts so many times as wide, for what is drawn with less care.
std::vector<std::vector<Bezier>> drawn_edge(const Shape&, const std::vector<HairTip>&, Coat,
                                            double coarse = 1);

/// The same outline without the stretches that lie within `reach` of `hidden`: open lines.
std::vector<std::vector<Bezier>> without_hidden(const std::vector<std::vector<Bezier>>&,
                                                const Ring& hidden, double reach);
}  // namespace furnish
