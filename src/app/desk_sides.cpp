#include "app/desk_sides.h"

#include <algorithm>
#include <utility>

#include "output/svg.h"

namespace furnish {
std::optional<std::string> DrawnSides::svg(const Frame& side, const DocumentInfo& info,
                                           DiagnosticSink& sink) {
  const auto known = std::ranges::find_if(
      last_, [&](const Drawn& one) { return one.info == info && one.side == side; });
  if (known != last_.end()) {
    std::rotate(last_.begin(), known, known + 1);
    return last_.front().svg;
  }
  auto drawn = to_svg(side, info, sink);
  if (!drawn) return std::nullopt;
  if (last_.size() == most) last_.pop_back();
  last_.push_front({side, info, *drawn});
  return drawn;
}
}  // namespace furnish
