#include "plan/kept_interval.h"

#include <algorithm>
#include <vector>

namespace furnish {

std::optional<KeptInterval> kept_interval(std::span<const Visit* const> history) {
  std::vector<std::chrono::days> between;
  for (std::size_t i = 1; i < history.size(); ++i) {
    const auto days = history[i]->date.value - history[i - 1]->date.value;
    if (days.count() > 0) between.push_back(days);
  }
  if (between.empty()) return std::nullopt;
  std::ranges::sort(between);
  const std::size_t middle = between.size() / 2;
  const auto median =
      between.size() % 2 == 1 ? between[middle] : (between[middle - 1] + between[middle]) / 2;
  return KeptInterval{median, static_cast<int>(between.size()) + 1};
}
}  // namespace furnish
