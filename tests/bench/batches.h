#pragma once

#include <string>

namespace furnish::bench {

/// Cards of many pets: one thread against two, few pets against many, and all of them again when
/// nothing changed. `folder`: where it may write.
void batches(const std::string& folder);
/// From a saved file to its card, with `furnish watch`.
void watching(const std::string& folder, int times);
}  // namespace furnish::bench
