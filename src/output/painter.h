#pragma once

#include <cairo.h>

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "output/squares.h"
#include "page/frame.h"

namespace furnish {

/// Points of 1/72 inch, as PDF counts them. Only the painter turns millimetres into them.
struct PageSize {
  double width, height;
};
/// A size in millimetres as points.
PageSize in_points(Size size);

/// Where links lead, by name. Names are unique in a document; ids only on their page.
struct TagNames {
  std::function<std::string(std::string_view id)> place;   ///< name for an id that a tag opens
  std::function<std::string(std::string_view id)> target;  ///< name a link to `id` leads to
  /// Takes codes that are not to be drawn as paths, of thousands of lines: where one belongs stands
  /// a mask, as many points wide as there are codes by then, for a form to take its place.
  std::vector<Squares>* codes = nullptr;
};

/// Draws the marks of a page that check_page() passed, in order. `cr` is in points from the page's
/// top left corner; it is left as it was found, but for an error status, which the caller must ask
/// for. With `names`, structure tags and links are written too (PDF only); else both are passed
/// over.
void paint(const Frame& page, cairo_t* cr, const TagNames* names = nullptr);
}  // namespace furnish
