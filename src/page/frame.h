#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "base/geometry.h"
#include "page/photograph.h"

namespace furnish {

class ShapedLine;

/// What a mark is drawn with. Black and white is the reference print; `quiet` is a grey of at least
/// 7:1 on paper, `tint` a light grey for areas that carry no text and no meaning of their own.
enum class Ink : std::uint8_t { text, quiet, tint, paper };

/// Role of a piece of the page in the document's structure; PDF tags, reading order and the text
/// dump all come from it. What stands in no tag is decoration.
enum class Structure : std::uint8_t {
  document,
  section,
  title,
  heading,
  paragraph,
  label,
  table,
  row,
  header_cell,
  cell,
  list,
  item,
  figure,
  caption,  ///< of the figure that it stands in
  form,     ///< a line to write on by hand
  tick,     ///< a box to tick by hand
  sign,     ///< a drawing that stands for words
  link,     ///< a LinkMark and the words that it lies on
  note
};

/// As the text dump has it: "header-cell".
std::string_view name(Structure);

/// Text with its baseline's left end at `baseline`. `role` names the type role it was set in, for
/// the dump and for tests of legibility.
struct TextMark {
  Point baseline;
  std::shared_ptr<const ShapedLine> line;
  Ink ink = Ink::text;
  std::string role;
  friend bool operator==(const TextMark&, const TextMark&) = default;
};

enum class Dash : std::uint8_t { solid, dashed, dotted };

struct StrokeMark {
  Point from, to;
  Length weight;
  Ink ink = Ink::text;
  Dash dash = Dash::solid;
  friend bool operator==(const StrokeMark&, const StrokeMark&) = default;
};

struct FillMark {
  Rect area;
  Ink ink = Ink::text;
  friend bool operator==(const FillMark&, const FillMark&) = default;
};

/// One contour: a start and Bézier segments (a straight line has its controls on the ends).
struct Contour {
  struct Curve {
    Point control1, control2, end;
    friend bool operator==(const Curve&, const Curve&) = default;
  };
  Point start;
  std::vector<Curve> curves;
  bool closed = true;
  friend bool operator==(const Contour&, const Contour&) = default;
};

/// Closed, of four straight lines.
Contour rectangle_contour(const Rect&);

/// An area, a line or both; filled by the even-odd rule. `weight` is that of the outline.
struct PathMark {
  std::vector<Contour> contours;
  std::optional<Ink> fill;
  std::optional<Ink> stroke;
  Length weight;
  Dash dash = Dash::solid;
  friend bool operator==(const PathMark&, const PathMark&) = default;
};

/// Parallel lines clipped to an area: how a region shows its tool without colour.
struct HatchMark {
  std::vector<Contour> area;
  double degrees = 45;  ///< of the lines, counted clockwise from the x axis
  Length spacing, weight;
  Ink ink = Ink::text;
  bool dots = false;  ///< dots on the same grid instead of lines
  friend bool operator==(const HatchMark&, const HatchMark&) = default;
};

/// A part of a photo, filling `area`.
struct ImageMark {
  Rect area;
  PhotographPtr photo;
  PixelRect crop;
  /// By what the photos are: of one file, opened twice, there are two.
  friend bool operator==(const ImageMark& a, const ImageMark& b) {
    return a.area == b.area && a.crop == b.crop && (a.photo == b.photo || *a.photo == *b.photo);
  }
};

/// Opens a piece of structure that holds all marks up to its CloseTag. `alt` is the text that
/// stands for a figure, a blank or a sign, `id` a place that links may name. `whole` is the room of
/// a drawing that a page set from right to left moves but does not turn over. `language` (BCP 47)
/// is that of what is in another language than what holds it, a page's in another than the
/// document; else empty.
struct OpenTag {
  Structure role;
  std::string alt, id;
  std::optional<Rect> whole{};
  std::string language{};
  int columns = 1;       ///< that a cell spans
  bool bullets = false;  ///< a list whose items begin with a dot
  friend bool operator==(const OpenTag&, const OpenTag&) = default;
};
struct CloseTag {
  friend bool operator==(const CloseTag&, const CloseTag&) = default;
};

/// An area of the page that leads to the place `id` on the same document.
struct LinkMark {
  Rect area;
  std::string id, says;
  friend bool operator==(const LinkMark&, const LinkMark&) = default;
};

using Mark = std::variant<TextMark, StrokeMark, FillMark, PathMark, HatchMark, ImageMark, OpenTag,
                          CloseTag, LinkMark>;

/// A finished page: things in their places, painted in order, which is also the reading order. PDF,
/// PNG, SVG and the text dump are all made from this and nothing else.
struct Frame {
  Size size;
  std::vector<Mark> marks;
  /// Text is the same if it is the same line, which a shaper keeps and gives again.
  friend bool operator==(const Frame&, const Frame&) = default;
};

/// Opens a tag for the length of a scope.
class TagScope {
 public:
  TagScope(Frame& frame, Structure role, std::string alt = {}, std::string id = {},
           std::optional<Rect> whole = {})
      : TagScope(frame, OpenTag{role, std::move(alt), std::move(id), whole}) {}
  TagScope(Frame& frame, OpenTag tag) : frame_(frame) { frame_.marks.emplace_back(std::move(tag)); }
  TagScope(const TagScope&) = delete;
  TagScope& operator=(const TagScope&) = delete;
  ~TagScope() { frame_.marks.emplace_back(CloseTag{}); }

 private:
  Frame& frame_;
};

/// What a finished document says about itself; goes into the PDF and the other formats alike.
struct DocumentInfo {
  std::string title, subject, language = "en";
  std::string date;  ///< ISO day; the only date that reaches the file
  friend bool operator==(const DocumentInfo&, const DocumentInfo&) = default;
};

/// One line a mark, indented by structure, millimetres with three decimals:
///     title 10.000 18.432 "Rex" name 31.25pt bold
/// Tests compare it whole; it is the page without any renderer in the way.
std::string to_text(const Frame&);
}  // namespace furnish
