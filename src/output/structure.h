#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "page/frame.h"

namespace furnish {

/// The standard structure types of PDF that are written (ISO 32000-1, 14.8.4), a closed set: one
/// that cairo does not know would lose the page.
enum class Tag : std::uint8_t {
  document,
  section,
  heading1,
  heading2,
  paragraph,
  span,
  strong,
  emphasis,
  table,
  row,
  header_cell,
  cell,
  list,
  item,
  item_label,
  item_body,
  figure,
  caption,
  form,
  note,
  link
};
/// "Sect", "TH": as in the file.
const char* pdf_name(Tag);
/// As cairo writes it, which has fewer: a strong word is a Span until it is finished.
const char* cairo_name(Tag);

struct Element;

/// A stretch of a line's text, in bytes. The last one takes what the line ends with along.
struct TextRange {
  std::size_t begin = 0, end = std::string::npos;
};

/// A mark, or an element that holds more: one of the two pointers is set. Of text, a mark may be
/// only a stretch.
struct Part {
  const Mark* mark = nullptr;
  std::unique_ptr<Element> element;
  TextRange range{};
};

/// A piece of the structure tree as it is written. Only an element that holds no other element has
/// content of its own; a mark beside elements is decoration.
struct Element {
  Tag tag;
  const OpenTag* opened = nullptr;  ///< null if no mark opened it
  const LinkMark* link = nullptr;   ///< of a link
  std::vector<Part> parts;
  std::string language{};  ///< BCP 47, if it is another than that of what holds it
};

/// The name of the place that an id is on a page, counted from 0, in the whole document.
std::string place_name(std::size_t page, std::string_view id);

/// The page's marks as a tree, in order. Text that stands beside elements gets one of its own, the
/// parts of a list item become its label and body, and what holds decoration alone vanishes. Marks
/// at the top are decoration. The first level of headings is H1 on a page without a title, as
/// PDF/UA lets no level be skipped. Refers to the frame's marks. pre: check_page() passed it.
std::vector<Part> structure_of(const Frame&);
}  // namespace furnish
