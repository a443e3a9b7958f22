#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "plan/order.h"

namespace furnish {

/// Everything that is cut, and the finishes: pads and sanitary area, clipped body, scissored body,
/// tail, head, one after another; within each, the fewest changes (see plan/work_order.h). Used by
/// order_of_work() alone.
std::vector<WorkStep> cutting(const Pet&, std::span<const DrawerGap>);

/// A step of the whole dog, standing.
WorkStep make_step(Stage, Task, std::string words = {}, std::optional<Method> how = {});
/// What the pet or its style says about a part of the finish; empty if nothing.
std::string finish_words(const Pet&, FinishPart);
}  // namespace furnish
