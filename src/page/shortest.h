#pragma once

#include <vector>

#include "page/remembered.h"

namespace furnish {

/// Several arrangements of the same content, of which the one that needs the least height is set;
/// the first of equals. One that is too wide is taken only if all are.
class Shortest final : public Block {
 public:
  /// pre: not empty.
  explicit Shortest(std::vector<BlockPtr> arrangements, Origin origin = {})
      : Block(std::move(origin)), arrangements_(std::move(arrangements)) {}
  Extent measure(Length width, const Setting&) const override;
  void place(const Rect&, const Setting&, Frame&) const override;
  std::vector<Part> parts(Length width, const Setting&) const override;

 private:
  const Part& best(Length width, const Setting&) const;
  Part worked_out(Length width, const Setting&) const;
  std::vector<BlockPtr> arrangements_;
  mutable Remembered<Part> best_;
};
}  // namespace furnish
