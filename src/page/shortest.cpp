#include "page/shortest.h"

#include <tuple>

namespace furnish {

const Block::Part& Shortest::best(Length width, const Setting& setting) const {
  return best_.of(width, setting, [&] { return worked_out(width, setting); });
}

Block::Part Shortest::worked_out(Length width, const Setting& setting) const {
  const auto cost = [](const Extent& extent) {
    return std::tuple(extent.too_wide, extent.wanted, extent.least);
  };
  Part best{nullptr, {}};
  for (const BlockPtr& one : arrangements_) {
    const Extent extent = one->measure(width, setting);
    if (best.block == nullptr || cost(extent) < cost(best.extent)) best = {one.get(), extent};
  }
  return best;
}

Extent Shortest::measure(Length width, const Setting& setting) const {
  return best(width, setting).extent;
}

void Shortest::place(const Rect& box, const Setting& setting, Frame& frame) const {
  best(box.size.width, setting).block->place(box, setting, frame);
}

std::vector<Block::Part> Shortest::parts(Length width, const Setting& setting) const {
  return {best(width, setting)};
}
}  // namespace furnish
