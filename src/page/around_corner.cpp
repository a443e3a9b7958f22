#include "page/around_corner.h"

#include <algorithm>

namespace furnish {

AroundCorner::AroundCorner(std::vector<BlockPtr> blocks, BlockPtr corner, Size corner_size,
                           Length gutter, Length air)
    : blocks_(std::move(blocks)),
      corner_(std::move(corner)),
      size_(corner_size),
      gutter_(gutter),
      air_(air) {}

std::vector<AroundCorner::Laid> AroundCorner::lay(Length width, const Setting& setting) const {
  std::vector<Laid> all;
  const Length narrow = width - size_.width - gutter_, below = size_.height + air_;
  Length top;
  for (const BlockPtr& block : blocks_) {
    Laid laid{std::max(top, below), width, block->measure(width, setting)};
    if (top < size_.height) {
      const Extent beside = block->measure(narrow, setting);
      if (top + beside.wanted < laid.top + laid.extent.wanted) laid = {top, narrow, beside};
    }
    top = laid.top + laid.extent.wanted;
    all.push_back(laid);
  }
  return all;
}

Extent AroundCorner::measure(Length width, const Setting& setting) const {
  Extent whole{};
  whole.wanted = size_.height;
  for (const Laid& laid : lay(width, setting)) {
    whole.wanted = std::max(whole.wanted, laid.top + laid.extent.wanted);
    whole.too_wide = std::max(whole.too_wide, laid.extent.too_wide);
    if (laid.extent.baseline == Length{}) continue;
    if (whole.baseline == Length{}) whole.baseline = laid.top + laid.extent.baseline;
    whole.last_baseline = laid.top + laid.extent.last_baseline;
  }
  whole.least = whole.wanted;
  return whole;
}

void AroundCorner::place(const Rect& box, const Setting& setting, Frame& frame) const {
  const std::vector<Laid> all = lay(box.size.width, setting);
  for (std::size_t i = 0; i < blocks_.size(); ++i) {
    blocks_[i]->place({{box.left(), box.top() + all[i].top}, {all[i].width, all[i].extent.wanted}},
                      setting, frame);
  }
  corner_->place({{box.right() - size_.width, box.top()}, size_}, setting, frame);
}

std::vector<Block::Part> AroundCorner::parts(Length width, const Setting& setting) const {
  const std::vector<Laid> all = lay(width, setting);
  std::vector<Part> parts;
  for (std::size_t i = 0; i < blocks_.size(); ++i) {
    parts.push_back({blocks_[i].get(), all[i].extent});
  }
  parts.push_back({corner_.get(), corner_->measure(size_.width, setting)});
  return parts;
}
}  // namespace furnish
