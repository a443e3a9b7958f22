#pragma once

#include "base/length.h"
#include "page/block.h"

namespace furnish {

/// A rule on which a ruler lies, from the left edge: black up to the low end of a range, hatched up
/// to the high one, a white notch at each centimetre, and at its end a tick that stands on the
/// rule. Both ends are exact to the micrometre. A range that is wider than the column is left out,
/// since part of it would be a wrong length.
class MeasuredRule final : public Block {
 public:
  MeasuredRule(LengthRange bar, Length weight, Ink ink = Ink::text)
      : bar_(bar), weight_(weight), ink_(ink) {}
  Extent measure(Length width, const Setting&) const override;
  void place(const Rect&, const Setting&, Frame&) const override;

  /// Thick enough to be held against hair; the air under it keeps it off the rule, of which it
  /// would else be taken for a part.
  static constexpr Length bar_height = Length::mm(1.4), air = Length::mm(0.75);
  /// How far the notches reach down into it, and how wide they are.
  static constexpr Length notch_depth = Length::mm(0.55), notch = Length::mm(0.25);

 private:
  LengthRange bar_;
  Length weight_;
  Ink ink_;
};
}  // namespace furnish
