#pragma once

#include <vector>

#include "page/frame.h"
#include "page/shaped_line.h"

namespace furnish::test {

/// What lies under a point: the last filled area painted before the text.
inline Ink ground_at(const std::vector<Mark>& marks, std::size_t before, Point point) {
  Ink ground = Ink::paper;
  for (std::size_t i = 0; i < before; ++i) {
    const auto* fill = std::get_if<FillMark>(&marks[i]);
    if (fill && contains(fill->area, {point, {}})) ground = fill->ink;
  }
  return ground;
}

/// Each text of the page with the ground under both ends of its baseline.
template <typename Visit>
std::size_t each_text(const Frame& frame, Visit visit) {
  std::size_t texts = 0;
  for (std::size_t i = 0; i < frame.marks.size(); ++i) {
    const auto* text = std::get_if<TextMark>(&frame.marks[i]);
    if (text == nullptr) continue;
    const Point end{text->baseline.x + text->line->width(), text->baseline.y};
    visit(*text, ground_at(frame.marks, i, text->baseline), ground_at(frame.marks, i, end));
    ++texts;
  }
  return texts;
}

/// What is black of a text, on the page.
inline Rect ink_of(const TextMark& text) {
  Rect ink = text.line->ink();
  ink.origin.x += text.baseline.x;
  ink.origin.y += text.baseline.y;
  return ink;
}
}  // namespace furnish::test
