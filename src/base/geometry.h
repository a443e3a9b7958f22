#pragma once

#include <algorithm>

#include "base/length.h"

namespace furnish {

/// On paper: x to the right, y down, from the page's top left corner.
struct Point {
  Length x, y;
  friend constexpr bool operator==(Point, Point) = default;
};

struct Size {
  Length width, height;
  friend constexpr bool operator==(Size, Size) = default;
};

/// Distances from the four edges, in the order CSS has them.
struct Insets {
  Length top, right, bottom, left;
};

struct Rect {
  Point origin;
  Size size;
  constexpr Length left() const { return origin.x; }
  constexpr Length right() const { return origin.x + size.width; }
  constexpr Length top() const { return origin.y; }
  constexpr Length bottom() const { return origin.y + size.height; }
  friend constexpr bool operator==(Rect, Rect) = default;
};

/// inset() and outset() undo each other.
constexpr Rect inset(Rect r, Insets by) {
  return {{r.origin.x + by.left, r.origin.y + by.top},
          {r.size.width - by.left - by.right, r.size.height - by.top - by.bottom}};
}
constexpr Rect outset(Rect r, Insets by) {
  return inset(r, {-by.top, -by.right, -by.bottom, -by.left});
}

/// True if the insides share a point; touching edges do not overlap.
constexpr bool overlap(Rect a, Rect b) {
  return a.left() < b.right() && b.left() < a.right() && a.top() < b.bottom() &&
         b.top() < a.bottom();
}

/// True if `inner` lies in `outer`, edges included.
constexpr bool contains(Rect outer, Rect inner) {
  return outer.left() <= inner.left() && inner.right() <= outer.right() &&
         outer.top() <= inner.top() && inner.bottom() <= outer.bottom();
}
}  // namespace furnish
