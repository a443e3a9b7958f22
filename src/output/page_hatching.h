#pragma once

#include <optional>
#include <string>

#include "output/content_path.h"

namespace furnish {

/// Lines at one distance all over a page, on the grid that painter.cpp draws hatching on: of many
/// areas clipped out of it, in a whole book, it stands in the file once.
struct PageHatching {
  int degrees = 0;      ///< of the lines, a multiple of 45, clockwise from the x axis
  int twentieths = 18;  ///< of a millimetre, from line to line
  friend auto operator<=>(const PageHatching&, const PageHatching&) = default;

  /// As content of a page of that size, in points; the lines' width is left open.
  std::string content(double width, double height) const;
};
/// What an item's lines are part of; none if it draws anything else, or too little.
std::optional<PageHatching> page_hatching(const ContentItem&);
}  // namespace furnish
