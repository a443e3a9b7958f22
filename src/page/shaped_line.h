#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include "base/geometry.h"
#include "page/fonts.h"
#include "page/type.h"

typedef struct _PangoGlyphItem PangoGlyphItem;
typedef struct _PangoLayout PangoLayout;

namespace furnish {

/// A stretch of a line in one face and size, as asked for.
struct ShapedRun {
  std::size_t begin, end;  ///< bytes of ShapedLine::text(), half open
  std::string family;      ///< the family that was used, which is a fallback for some scripts
  Face face;
  Role role;
  double points;
  Length capital_height;   ///< of Latin capitals in this size
  std::string language{};  ///< BCP 47, if it is another than the page's
};

/// A glyph of a line. Distances are in Pango's units, 1024 to a point; y down.
struct LineGlyph {
  std::uint32_t glyph;
  std::size_t at;  ///< byte of the line that its letters begin at
  int width, x, y;
};

/// Neighbouring glyphs in one face and size, from left to right.
struct LineStretch {
  Face face;
  TypeSize size;
  std::size_t begin, end;  ///< bytes of the line, half open
  std::vector<LineGlyph> glyphs;
};

/// One line of set text: never changes, knows its own size and not where it stands. Distances are
/// from the left end of its baseline, x to the right, y down.
class ShapedLine {
 public:
  /// Line `number` (from 0) of a finished layout, which is kept alive. pre: it has that line.
  ShapedLine(PangoLayout*, int number, std::vector<ShapedRun>);
  /// A line from left to right in the bundled family, of `bytes`, of which the last may be the
  /// space that a line break took the place of. Holds the fonts. pre: there is a stretch.
  ShapedLine(FontSet&, std::string bytes, std::vector<LineStretch>, std::vector<ShapedRun>);
  ~ShapedLine();
  ShapedLine(const ShapedLine&) = delete;
  ShapedLine& operator=(const ShapedLine&) = delete;

  /// UTF-8, without the space that a line break took the place of.
  const std::string& text() const { return text_; }
  Length width() const { return logical_.size.width; }
  Length ascent() const { return -logical_.top(); }
  Length descent() const { return logical_.bottom(); }
  /// What is black: empty for white space. Rounded outwards to whole micrometres. Reads the
  /// outlines of the glyphs, which costs more than setting the line; ask only where it matters.
  Rect ink() const;
  /// What the fonts ask for; its width is the advance.
  Rect logical() const { return logical_; }
  const std::vector<ShapedRun>& runs() const { return runs_; }
  /// Largest size on the line.
  double points() const;

  /// True if the line as a whole runs from right to left.
  bool from_right() const { return from_right_; }
  /// For pango_cairo_show_glyph_item() one after another from left to right, at 72 units per inch.
  /// Where they stand in the text is said in bytes of whole_text(). Made when they are first asked
  /// for, by the thread of the set of fonts.
  const std::vector<PangoGlyphItem*>& glyph_items() const;
  const char* whole_text() const { return whole_text_; }
  /// Where in it the line begins.
  std::size_t begins_at() const { return begins_at_; }

 private:
  struct Plain;
  std::shared_ptr<void> layout_;
  std::unique_ptr<Plain> plain_;  ///< instead of a layout
  mutable std::vector<PangoGlyphItem*> items_;
  const char* whole_text_;
  std::size_t begins_at_;
  bool from_right_;
  std::string text_;
  Rect logical_;
  std::vector<ShapedRun> runs_;
};
}  // namespace furnish
