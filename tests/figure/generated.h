#pragma once

#include <cstdint>
#include <random>
#include <vector>

#include "figure/figure.h"
#include "figure/hair.h"

namespace furnish {

/// Noses, legs, bodies, ears and tails in all combinations, each with one bone or another.
std::vector<Build> all_builds();
/// Builds in which each value of each part of a build occurs at least once.
std::vector<Build> some_builds();

/// A number in [low, high], the same on every machine for the same generator.
double between(std::mt19937& random, double low, double high);
Build any_build(std::mt19937&);
/// A plan with a length and a tool for every region, and a callout for each.
FigureInput any_plan(std::mt19937&);
/// The same length everywhere, in units of the figure.
DrawnCoat even_coat(Coat, double length);
}  // namespace furnish
