#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "base/geometry.h"
#include "page/fonts.h"
#include "page/type.h"

typedef struct _PangoLayout PangoLayout;
typedef struct _PangoLayoutLine PangoLayoutLine;

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

/// One line of set text: never changes, knows its own size and not where it stands. Distances are
/// from the left end of its baseline, x to the right, y down.
class ShapedLine {
 public:
  /// Line `number` (from 0) of a finished layout, which is kept alive. pre: it has that line.
  ShapedLine(PangoLayout*, int number, std::vector<ShapedRun>);
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

  /// For pango_cairo_show_layout_line() with the pen at the baseline's left end, at 72 units per
  /// inch.
  PangoLayoutLine* pango() const { return line_; }

 private:
  PangoLayout* layout_;
  PangoLayoutLine* line_;
  std::string text_;
  Rect logical_;
  std::vector<ShapedRun> runs_;
};
}  // namespace furnish
