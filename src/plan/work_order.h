#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "trade/region.h"

namespace furnish {

/// Work with one tool in one position. Layers come one after another: all of layer 0 before any
/// of 1.
struct WorkNode {
  int layer = 0;
  int tool = 0;  ///< equal if it is the same tool; not negative
  Stance stance = Stance::standing;
};

/// An order of the nodes, as indices, that keeps the layers and has the fewest changes of tool and,
/// among those, the fewest of position, counted from standing with no tool to standing at the end.
/// Exact: best-first search (A*) with a bound from below, over sets of nodes done. Equal input,
/// equal order. Two cuts keep it small, and neither loses the optimum:
///  - a tool that the layers before and after do not both use is never put down half done: picking
///  it
///    up again is a change that nothing pays for;
///  - tools of one layer alone, needed in the same positions, are alike, so they are begun in
///  order.
/// pre: at most 64 nodes, no two alike in layer, tool and stance.
std::vector<std::size_t> best_order(std::span<const WorkNode>);
}  // namespace furnish
