#pragma once

#include <set>
#include <utility>
#include <vector>

#include "page/frame.h"

namespace furnish {

/// What lets many PDFs that are drawn one after another share their fonts. Cairo numbers the faces
/// of a document and the glyphs of each as it meets them; so where every document begins with one
/// page of all lines that ever brought a glyph nobody had met, a face and a glyph have one number
/// in all of them, and the fonts of the last hold those of all before.
class SharedType {
 public:
  /// Looks a page's lines through, and keeps those with a glyph that is new.
  void meet(const Frame&);
  /// The page to begin with: lines upon each other, for nobody to see.
  Frame page() const;

 private:
  bool is_new(const ShapedLine&);
  std::set<std::pair<const void*, unsigned>> met_;  ///< face and glyph; the lines keep faces alive
  std::vector<TextMark> lines_;
};
}  // namespace furnish
