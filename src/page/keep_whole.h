#pragma once

#include <string>

#include "page/paragraph.h"
#include "page/stack.h"

namespace furnish {

/// A paragraph with one word that is not broken within: where it is wider than the place, the place
/// is too narrow. A word that no place would hold is broken like any other.
class WholeWord final : public Block {
 public:
  /// `word`: the longest one of the text.
  WholeWord(std::vector<TextSpan> text, TextSpan word, TextStyle, Origin = {});
  Extent measure(Length width, const Setting&) const override;
  void place(const Rect&, const Setting&, Frame&) const override;
  Length natural_width(const Setting&) const override;

 private:
  BlockPtr text_, word_;
  bool absurd_;
};

/// Two blocks that share the width, so that those of one column stand under each other; where the
/// first needs more for a line, or the second takes more lines than it would below, it goes below.
class SharesOrBelow final : public Block {
 public:
  struct Share {
    BlockPtr block;
    int flex = 1;
  };
  SharesOrBelow(Share first, Share second, Length gutter);
  Extent measure(Length width, const Setting&) const override;
  void place(const Rect&, const Setting&, Frame&) const override;
  std::vector<Part> parts(Length width, const Setting&) const override;

 private:
  BlockPtr arranged(Length width, const Setting&) const;
  Share first_, second_;
  Length gutter_;
  BlockPtr beside_, below_;
};
}  // namespace furnish
