#pragma once

#include <catch2/catch.hpp>
#include <memory>
#include <string>
#include <vector>

#include "page/alerts.h"
#include "page/canvas.h"
#include "page/compose.h"
#include "page/forms.h"
#include "page/list.h"
#include "base/paper.h"
#include "page/rows.h"
#include "page/stack.h"
#include "page/table.h"

namespace furnish::test {

inline std::string fonts_folder() {
  return std::string(FURNISH_SOURCE_DIR) + "/fonts";
}

/// Fonts, a sink and a shaper that live together.
struct Desk {
  DiagnosticSink sink;
  std::unique_ptr<FontSet> fonts = FontSet::open(fonts_folder(), sink);
  TextShaper shaper{*fonts, sink};

  Setting setting(const std::vector<TypeRole>& roles, int step = 0, int steps = 12) {
    return {TypeScale(roles, fonts->capital_height(), step, steps), Length::mm(4), shaper};
  }
};

inline std::vector<TypeRole> reading_roles() {
  return {{Role::title, Length::mm(2000), 26}, {Role::alert, Length::mm(1000)},
          {Role::action, Length::mm(700)},     {Role::body, Length::mm(600)},
          {Role::label, Length::mm(600), 17},  {Role::foot, Length::mm(400), 16}};
}

template <typename Each>
std::vector<const Each*> marks_of(const Frame& frame) {
  std::vector<const Each*> found;
  for (const Mark& mark : frame.marks) {
    if (const Each* each = std::get_if<Each>(&mark)) found.push_back(each);
  }
  return found;
}

/// Where a mark of text is black on the page.
inline Rect ink_on_page(const TextMark& mark) {
  Rect ink = mark.line->ink();
  ink.origin.x += mark.baseline.x;
  ink.origin.y += mark.baseline.y;
  return ink;
}

/// All text in reading order, a space between lines.
inline std::string text_of(const Frame& frame) {
  std::string text;
  for (const TextMark* mark : marks_of<TextMark>(frame)) {
    if (!text.empty()) text += ' ';
    text += mark->line->text();
  }
  return text;
}

/// True if tags close in the order they open and none is left.
inline bool tags_balanced(const Frame& frame) {
  int depth = 0;
  for (const Mark& mark : frame.marks) {
    if (std::holds_alternative<OpenTag>(mark)) ++depth;
    if (std::holds_alternative<CloseTag>(mark) && --depth < 0) return false;
  }
  return depth == 0;
}

/// Words from a small stock, for made-up texts; the same for the same `draw`.
template <typename Draw>
std::string made_up_text(Draw&& draw, int words) {
  static constexpr const char* stock[] = {"comb", "the",    "lay",  "never", "towel", "thinners",
                                          "½",    "into",   "ears", "Ứng",   "πόδι",  "back-brush",
                                          "10:1", "“nail”", "a",    "Жук",   "of",    "shears"};
  std::string text;
  for (int i = 0; i < words; ++i) {
    if (i > 0) text += ' ';
    text += stock[draw(std::size(stock))];
  }
  return text;
}
}  // namespace furnish::test
