#pragma once

#include <vector>

#include "page/block.h"

namespace furnish {

/// Blocks one under the other round something in the top right corner: what stands beside it is
/// narrower, what stands below has the whole width. No block is broken: one that begins beside the
/// corner stays narrow, unless it ends no lower if it waits for the corner's end. All heights are
/// as wanted, since a block that moved up could meet the corner.
class AroundCorner final : public Block {
 public:
  /// `gutter` is kept free at the corner's left, and `air` below it.
  AroundCorner(std::vector<BlockPtr>, BlockPtr corner, Size corner_size, Length gutter, Length air);
  Extent measure(Length width, const Setting&) const override;
  void place(const Rect&, const Setting&, Frame&) const override;
  std::vector<Part> parts(Length width, const Setting&) const override;

 private:
  struct Laid {
    Length top, width;
    Extent extent;
  };
  std::vector<Laid> lay(Length width, const Setting&) const;

  std::vector<BlockPtr> blocks_;
  BlockPtr corner_;
  Size size_;
  Length gutter_, air_;
};
}  // namespace furnish
