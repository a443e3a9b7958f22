#pragma once

#include <utility>

#include "page/block.h"

namespace furnish {

/// A piece of what goes on from the piece before it: where both stand on one side, it is set
/// otherwise (a table's next rows without their head).
class GoesOn final : public Block {
 public:
  /// `alone`: as the first on a side, or after anything else; `after`: as the next.
  GoesOn(BlockPtr alone, BlockPtr after)
      : Block(alone->origin()), alone_(std::move(alone)), after_(std::move(after)) {}
  Extent measure(Length width, const Setting& setting) const override {
    return alone_->measure(width, setting);
  }
  void place(const Rect& box, const Setting& setting, Frame& frame) const override {
    alone_->place(box, setting, frame);
  }
  std::vector<Part> parts(Length width, const Setting& setting) const override {
    return alone_->parts(width, setting);
  }
  const BlockPtr& after() const { return after_; }

 private:
  BlockPtr alone_, after_;
};
}  // namespace furnish
