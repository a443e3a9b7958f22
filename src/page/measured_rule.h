#pragma once

#include "base/length.h"
#include "page/block.h"

namespace furnish {

/// A rule that is a measure as well: on it lies a bar from the left edge, solid up to the low end
/// of a range and hatched up to the high one, both exact to the micrometre. A range that is wider
/// than the column is left out, since part of a bar would be a wrong length.
class MeasuredRule final : public Block {
 public:
  MeasuredRule(LengthRange bar, Length weight, Ink ink = Ink::text)
      : bar_(bar), weight_(weight), ink_(ink) {}
  Extent measure(Length width, const Setting&) const override;
  void place(const Rect&, const Setting&, Frame&) const override;

  /// Thick enough to be held against hair, thin enough to stay a rule.
  static constexpr Length bar_height = Length::mm(1.1);

 private:
  LengthRange bar_;
  Length weight_;
  Ink ink_;
};
}  // namespace furnish
