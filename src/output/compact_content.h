#pragma once

#include <cstddef>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace furnish {

/// What stands on pages more than once: the content of a form XObject (ISO 32000-1, 8.10) and the
/// box that holds it, of this size and `margin` on all sides from its origin.
struct SharedShape {
  std::string content;
  double width = 0, height = 0;
  bool of_many = false;  ///< pages of other parts have it too, to the byte
  static constexpr int margin = 9;
};
struct PageContent {
  std::string_view content;
  double width = 0, height = 0;  ///< of the page, in points
};
struct CompactPage {
  std::string content;
  std::set<std::size_t> shapes;  ///< that it draws
};
struct CompactContents {
  std::vector<CompactPage> pages;
  std::vector<SharedShape> shapes;
};
/// What a page's resources call a shape: "/r12".
std::string name_of_shape(std::size_t);

/// Contents of pages drawn with fewer bytes, as nobody's eye can tell: points of paths to a
/// hundredth of a point where cairo writes a thousandth and more, those of curves to a tenth (0.035
/// mm: a dot of 700 an inch), curves and lines as fewer ones (fitted_curves.h), four straight lines
/// round a rectangle as one, the squares of a code as a mask, rows of dots as dashes, hatching as
/// part of a hatched page, and what is drawn more than once, also from its other side or smaller,
/// as one shape.
CompactContents compact_contents(std::span<const PageContent>);
}  // namespace furnish
