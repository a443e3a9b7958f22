#pragma once

#include <functional>
#include <string>

#include "page/block.h"

namespace furnish {

/// A drawing of a fixed shape. Takes the room it is given up to `most` of the width, keeps its
/// aspect and stands in the middle. Tagged as a figure with its alternative text.
class Canvas final : public Block {
 public:
  using Draw = std::function<void(const Rect&, const Setting&, Frame&)>;
  /// A size that does not change.
  Canvas(Size, Draw, std::string alt, Origin = {});
  /// Grows with spare room from `least` to `most` height, by `stretch`; keeps width/height
  /// `aspect`, so it is never wider than the column.
  Canvas(double aspect, Length least, Length most, int stretch, Draw, std::string alt, Origin = {});
  Extent measure(Length width, const Setting&) const override;
  void place(const Rect&, const Setting&, Frame&) const override;

 private:
  double aspect_;
  Length least_, most_;
  int stretch_;
  Draw draw_;
  std::string alt_;
};
}  // namespace furnish
