#pragma once

#include <cstdint>
#include <memory>
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
  table,
  row,
  header_cell,
  cell,
  list,
  item,
  item_label,
  item_body,
  figure,
  form,
  note,
  link
};
/// "Sect", "TH": as in the file.
const char* pdf_name(Tag);

struct Element;

/// A mark, or an element that holds more: one of the two pointers is set.
struct Part {
  const Mark* mark = nullptr;
  std::unique_ptr<Element> element;
};

/// A piece of the structure tree as it is written. Only an element that holds no other element has
/// content of its own; a mark beside elements is decoration.
struct Element {
  Tag tag;
  const OpenTag* opened = nullptr;  ///< null if no mark opened it
  const LinkMark* link = nullptr;   ///< of a link, which has no parts
  std::vector<Part> parts;
};

/// The page's marks as a tree, in order. Text that stands beside elements gets one of its own, the
/// parts of a list item become its label and body, and what holds decoration alone vanishes. Marks
/// at the top are decoration. The first level of headings is H1 on a page without a title, as
/// PDF/UA lets no level be skipped. Refers to the frame's marks. pre: check_page() passed it.
std::vector<Part> structure_of(const Frame&);
}  // namespace furnish
