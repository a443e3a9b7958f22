#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "plan/order.h"

namespace furnish {

/// When a part is cut, seen from the bath. Between two of these come other tasks with their own
/// tools, so that each is ordered by itself and the whole is still the best order.
enum class CutTime : std::uint8_t {
  before_brushing,  ///< the clipper on an unwashed coat that no brush goes through
  before_bath,      ///< hand or knife on a dry, dusty coat: a washed and conditioned one slips
  after_bath
};

/// Everything that is cut at that time, and after the bath the finishes: pads and sanitary area,
/// clipped body, scissored body, tail, head, one after another; within each, the fewest changes
/// (see plan/work_order.h). Where scissor work borders on a face or a tail that is clipped, that is
/// clipped with the body: the line is cut against what is short already (common practice, no
/// source). No tool comes from pads or sanitary area to a face unwashed: a face that is clipped
/// early with their blade is clipped before them, one that is cut at the end says to wash the tool
/// (hygiene; common practice, no source). `clip_first`: places clipped before the bath although the
/// pet's file does not say so. The pose: see pose(). Used by order_of_work() alone.
std::vector<WorkStep> cutting(const Pet&, std::span<const DrawerGap>,
                              std::span<const Place> clip_first, CutTime, PoseWords);

/// A step of the whole dog, standing.
WorkStep make_step(Stage, Task, std::string words = {}, std::optional<Method> how = {});
/// What the pet or its style says about a part of the finish; empty if nothing.
std::string finish_words(const Pet&, FinishPart);
}  // namespace furnish
