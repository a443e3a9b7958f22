#include "page/impose.h"

#include <fmt/format.h>

#include <algorithm>

#include "page/move.h"
#include "page/shaped_line.h"

namespace furnish {
namespace {
constexpr Length mark_length = Length::mm(3), mark_offset = Length::mm(1),
                 mark_weight = Length::mm(0.1);

/// A mark of frame `number` (from 0), moved; places keep apart from those of the other frames.
Mark moved_apart(const Mark& mark, Point by, std::size_t number) {
  Mark out = moved(mark, by);
  const auto own = [&](std::string& id) {
    if (!id.empty() && number > 0) id = fmt::format("{}-{}", id, number + 1);
  };
  if (auto* const tag = std::get_if<OpenTag>(&out)) {
    if (tag->role == Structure::document) tag->role = Structure::section;
    own(tag->id);
  }
  if (auto* const link = std::get_if<LinkMark>(&out)) own(link->id);
  return out;
}

/// True if both have the same text in the same places.
bool reads_alike(const Frame& a, const Frame& b) {
  const auto alike = [](const Mark& one, const Mark& other) {
    const auto *const text = std::get_if<TextMark>(&one), *const same =
                                                              std::get_if<TextMark>(&other);
    if (text == nullptr || same == nullptr) return one.index() == other.index();
    return text->baseline == same->baseline && text->line->text() == same->line->text();
  };
  return std::ranges::equal(a.marks, b.marks, alike);
}

/// What is shown of a page, and nothing that is read.
bool is_shown(const Mark& mark) {
  return !std::holds_alternative<OpenTag>(mark) && !std::holds_alternative<CloseTag>(mark) &&
         !std::holds_alternative<LinkMark>(mark);
}

/// From the edge of the cards outwards; where the sheet leaves no room there, inwards on the cut.
std::pair<Length, Length> before(Length edge) {
  if (edge >= mark_length + mark_offset)
    return {edge - mark_offset - mark_length, edge - mark_offset};
  return {edge, edge + mark_length};
}

void add_cut_marks(const Grid& grid, Size card, Point corner, Frame& frame) {
  const auto stroke = [&](Point from, Point to) {
    frame.marks.emplace_back(StrokeMark{from, to, mark_weight});
  };
  const auto [top_from, top_to] = before(corner.y);
  for (int i = 0; i <= grid.columns; ++i) {
    const Length x = corner.x + card.width * i;
    if (x <= Length{} || x >= grid.sheet.width) continue;
    stroke({x, top_from}, {x, top_to});
    // The grid stands in the middle, so the other end is a mirror image.
    stroke({x, grid.sheet.height - top_to}, {x, grid.sheet.height - top_from});
  }
  const auto [left_from, left_to] = before(corner.x);
  for (int i = 0; i <= grid.rows; ++i) {
    const Length y = corner.y + card.height * i;
    if (y <= Length{} || y >= grid.sheet.height) continue;
    stroke({left_from, y}, {left_to, y});
    stroke({grid.sheet.width - left_to, y}, {grid.sheet.width - left_from, y});
  }
}
}  // namespace

Grid grid_for(Size frame, Size sheet) {
  const auto grid = [&](Size lying) {
    return Grid{static_cast<int>(lying.width.um() / frame.width.um()),
                static_cast<int>(lying.height.um() / frame.height.um()), lying};
  };
  const Grid upright = grid(sheet), turned = grid({sheet.height, sheet.width});
  return turned.count() > upright.count() ? turned : upright;
}

std::vector<Frame> impose(std::span<const Frame> frames, Size sheet, ImposedSide side) {
  std::vector<Frame> sheets;
  if (frames.empty()) return sheets;
  const Size card = frames.front().size;
  const Grid grid = grid_for(card, sheet);
  const auto each = static_cast<std::size_t>(grid.count());
  if (each == 0) return sheets;
  const Point corner{(grid.sheet.width - card.width * grid.columns) / 2,
                     (grid.sheet.height - card.height * grid.rows) / 2};
  for (std::size_t first = 0; first < frames.size(); first += each) {
    Frame& out = sheets.emplace_back();
    out.size = grid.sheet;
    add_cut_marks(grid, card, corner, out);
    const std::size_t end = std::min(first + each, frames.size());
    const auto place_of = [&](std::size_t i) {
      const auto cell = static_cast<std::int64_t>(i - first);
      const std::int64_t across = cell % grid.columns;
      return Point{
          corner.x + card.width * (side == ImposedSide::backs ? grid.columns - 1 - across : across),
          corner.y + card.height * (cell / grid.columns)};
    };
    // Copies of one card are read once; the others are only shown, outside the document.
    std::vector<std::size_t> read;
    for (std::size_t i = first; i < end; ++i) {
      const bool copy = std::ranges::any_of(
          read, [&](std::size_t other) { return reads_alike(frames[other], frames[i]); });
      if (!copy) read.push_back(i);
      if (!copy) continue;
      for (const Mark& mark : frames[i].marks) {
        if (is_shown(mark)) out.marks.push_back(moved(mark, place_of(i)));
      }
    }
    const TagScope document(out, Structure::document);
    for (const std::size_t i : read) {
      for (const Mark& mark : frames[i].marks) {
        out.marks.push_back(moved_apart(mark, place_of(i), i - first));
      }
    }
  }
  return sheets;
}
}  // namespace furnish
