#include "output/squares.h"

#include <fmt/format.h>

#include <algorithm>

namespace furnish {
namespace {
/// The box of a contour that is a rectangle as rectangle_contour() makes one.
std::optional<Rect> box_of(const Contour& contour) {
  if (contour.curves.size() != 3) return std::nullopt;
  const Point from = contour.start, to = contour.curves[1].end;
  const Rect box{from, {to.x - from.x, to.y - from.y}};
  if (contour != rectangle_contour(box)) return std::nullopt;
  return box;
}

/// How many sides fit into a length; none if a piece is left.
std::optional<std::size_t> times(Length side, Length length) {
  if (length < Length{} || length.um() % side.um() != 0) return std::nullopt;
  return static_cast<std::size_t>(length.um() / side.um());
}
}  // namespace

std::optional<Squares> squares_of(const PathMark& mark) {
  constexpr std::size_t few = 100, most = 1000;
  if (!mark.fill || mark.stroke || mark.contours.size() < few) return std::nullopt;
  std::vector<Rect> boxes;
  for (const Contour& contour : mark.contours) {
    const auto box = box_of(contour);
    if (!box) return std::nullopt;
    boxes.push_back(*box);
  }
  const Length side = boxes.front().size.height;
  if (side <= Length{}) return std::nullopt;
  Point low = boxes.front().origin, high = low;
  for (const Rect& box : boxes) {
    low = {std::min(low.x, box.left()), std::min(low.y, box.top())};
    high = {std::max(high.x, box.right()), std::max(high.y, box.bottom())};
  }
  const auto columns = times(side, high.x - low.x), rows = times(side, high.y - low.y);
  if (!columns || !rows || *columns > most || *rows > most) return std::nullopt;
  Squares out{{low, {high.x - low.x, high.y - low.y}}, *columns, *rows, {}};
  out.dark.resize(*columns * *rows);
  for (const Rect& box : boxes) {
    const auto x = times(side, box.left() - low.x), y = times(side, box.top() - low.y),
               wide = times(side, box.size.width);
    if (!x || !y || !wide || box.size.height != side) return std::nullopt;
    for (std::size_t i = 0; i < *wide; ++i) {
      auto bit = out.dark[*y * *columns + *x + i];
      if (bit) return std::nullopt;  // twice, and so light
      bit = true;
    }
  }
  return out;
}

std::string filled(const Squares& squares) {
  std::string out;
  for (std::size_t row = 0; row < squares.rows; ++row) {
    const auto dark = [&](std::size_t column) {
      return column < squares.columns && squares.dark[row * squares.columns + column];
    };
    for (std::size_t from = 0; from < squares.columns; ++from) {
      if (!dark(from)) continue;
      std::size_t to = from;
      while (dark(to)) ++to;
      out += fmt::format("{} {} {} 1 re\n", from, squares.rows - 1 - row, to - from);
      from = to;
    }
  }
  return out + "f\n";
}
}  // namespace furnish
