#include "page/stack.h"

#include <algorithm>

#include "page/fit.h"

namespace furnish {

Gap::Gap(double wanted, double least, int stretch)
    : wanted_(wanted), least_(std::min(least, wanted)), stretch_(stretch) {}

Extent Gap::measure(Length, const Setting& setting) const {
  return {scaled(setting.rhythm, least_), scaled(setting.rhythm, wanted_), stretch_};
}

Extent Rule::measure(Length, const Setting&) const {
  return {weight_, weight_};
}

void Rule::place(const Rect& box, const Setting&, Frame& frame) const {
  const Length y = box.top() + weight_ / 2;
  frame.marks.emplace_back(StrokeMark{{box.left(), y}, {box.right(), y}, weight_, ink_});
}

Column::Column(std::vector<BlockPtr> blocks, Origin origin, std::optional<Structure> structure)
    : Block(std::move(origin)), blocks_(std::move(blocks)), structure_(structure) {}

Extent Column::measure(Length width, const Setting& setting) const {
  return measured_.of(width, setting, [&] { return worked_out(width, setting); });
}

Extent Column::worked_out(Length width, const Setting& setting) const {
  Extent whole{};
  for (const Part& part : parts(width, setting)) {
    const Extent& extent = part.extent;
    if (extent.baseline > Length{}) {
      if (whole.baseline == Length{}) whole.baseline = whole.wanted + extent.baseline;
      whole.last_baseline = whole.wanted + extent.last_baseline;
    }
    whole.least += extent.least;
    whole.wanted += extent.wanted;
    whole.stretch += extent.stretch;
    whole.too_wide = std::max(whole.too_wide, extent.too_wide);
  }
  return whole;
}

void Column::place(const Rect& box, const Setting& setting, Frame& frame) const {
  std::vector<Spring> springs;
  for (const Part& part : parts(box.size.width, setting)) {
    springs.push_back({part.extent.wanted, part.extent.least, part.extent.stretch});
  }
  const Fit fit = fit_column(springs, box.size.height);
  std::optional<TagScope> tag;
  if (structure_) tag.emplace(frame, *structure_);
  Length top = box.top();
  for (std::size_t i = 0; i < blocks_.size(); ++i) {
    blocks_[i]->place({{box.left(), top}, {box.size.width, fit.heights[i]}}, setting, frame);
    top += fit.heights[i];
  }
}

Length Column::natural_width(const Setting& setting) const {
  Length widest;
  for (const BlockPtr& block : blocks_) widest = std::max(widest, block->natural_width(setting));
  return widest;
}

std::vector<Block::Part> Column::parts(Length width, const Setting& setting) const {
  std::vector<Part> parts;
  for (const BlockPtr& block : blocks_) {
    parts.push_back({block.get(), block->measure(width, setting)});
  }
  return parts;
}
}  // namespace furnish
