#include <algorithm>

#include "page/stack.h"

namespace furnish {
namespace {
/// How far each cell stands below the top, so that what is to be aligned is. `height` is what the
/// cells need then if each is as high as `of` says.
std::vector<Length> offsets(const std::vector<Block::Part>& parts, Beside::Line line) {
  const auto anchor = [line](const Extent& extent) {
    switch (line) {
      case Beside::Line::baseline:
        return extent.baseline;
      case Beside::Line::last_baseline:
        return extent.last_baseline;
      case Beside::Line::bottom:
        return extent.wanted;
      case Beside::Line::top:
        break;
    }
    return Length{};
  };
  Length lowest;
  for (const auto& part : parts) lowest = std::max(lowest, anchor(part.extent));
  std::vector<Length> result;
  for (const auto& part : parts) {
    // What has no text has no baseline and stands at the top.
    const Length own = anchor(part.extent);
    result.push_back(own > Length{} ? lowest - own : Length{});
  }
  return result;
}
}  // namespace

Beside::Beside(std::vector<Cell> cells, Length gutter, Line line, Origin origin)
    : Block(std::move(origin)), cells_(std::move(cells)), gutter_(gutter), line_(line) {}

std::vector<Length> Beside::widths(Length width) const {
  Length rest = width - gutter_ * (static_cast<std::int64_t>(cells_.size()) - 1);
  std::int64_t shares = 0;
  for (const Cell& cell : cells_) {
    if (cell.width) {
      rest -= *cell.width;
    } else {
      shares += cell.flex;
    }
  }
  rest = std::max(rest, Length{});
  std::vector<Length> result;
  std::int64_t given = 0;  // running total, so that the shares add up to the rest
  for (const Cell& cell : cells_) {
    if (cell.width) {
      result.push_back(*cell.width);
      continue;
    }
    result.push_back(rest * (given + cell.flex) / shares - rest * given / shares);
    given += cell.flex;
  }
  return result;
}

std::vector<Block::Part> Beside::parts(Length width, const Setting& setting) const {
  const std::vector<Length> each = widths(width);
  std::vector<Part> parts;
  for (std::size_t i = 0; i < cells_.size(); ++i) {
    parts.push_back({cells_[i].block.get(), cells_[i].block->measure(each[i], setting)});
  }
  return parts;
}

Extent Beside::measure(Length width, const Setting& setting) const {
  return measured_.of(width, setting, [&] { return worked_out(width, setting); });
}

Extent Beside::worked_out(Length width, const Setting& setting) const {
  const std::vector<Part> all = parts(width, setting);
  const std::vector<Length> drop = offsets(all, line_);
  Extent whole{};
  Length used = gutter_ * (static_cast<std::int64_t>(cells_.size()) - 1);
  for (const Length each : widths(width)) used += each;
  whole.too_wide = std::max(Length{}, used - width);
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Extent& extent = all[i].extent;
    whole.least = std::max(whole.least, drop[i] + extent.least);
    whole.wanted = std::max(whole.wanted, drop[i] + extent.wanted);
    whole.stretch = std::max(whole.stretch, extent.stretch);
    whole.too_wide = std::max(whole.too_wide, extent.too_wide);
    if (extent.baseline == Length{}) continue;
    const Length first = drop[i] + extent.baseline;
    whole.baseline = whole.baseline == Length{} ? first : std::min(whole.baseline, first);
    whole.last_baseline = std::max(whole.last_baseline, drop[i] + extent.last_baseline);
  }
  return whole;
}

void Beside::place(const Rect& box, const Setting& setting, Frame& frame) const {
  const std::vector<Length> each = widths(box.size.width);
  const std::vector<Part> all = parts(box.size.width, setting);
  const std::vector<Length> drop = offsets(all, line_);
  Length left = box.left();
  for (std::size_t i = 0; i < cells_.size(); ++i) {
    cells_[i].block->place({{left, box.top() + drop[i]}, {each[i], box.size.height - drop[i]}},
                           setting, frame);
    left += each[i] + gutter_;
  }
}

Length Beside::natural_width(const Setting& setting) const {
  Length sum = gutter_ * (static_cast<std::int64_t>(cells_.size()) - 1);
  for (const Cell& cell : cells_) sum += cell.width.value_or(cell.block->natural_width(setting));
  return sum;
}

Ends::Ends(BlockPtr start, BlockPtr end, Length gutter, Beside::Line line, BlockPtr below,
           Origin origin)
    : Block(std::move(origin)),
      start_(std::move(start)),
      end_(std::move(end)),
      below_(below ? std::move(below) : end_),
      gutter_(gutter),
      line_(line) {}

BlockPtr Ends::arranged(Length width, const Setting& setting) const {
  const Length start = start_->natural_width(setting), end = end_->natural_width(setting),
               rest = width - start - gutter_;
  if (rest >= end || rest * 5 >= width * 2) {
    return std::make_shared<Beside>(std::vector<Beside::Cell>{{start_, start}, {end_}}, gutter_,
                                    line_);
  }
  return std::make_shared<Column>(std::vector<BlockPtr>{start_, below_});
}

Extent Ends::measure(Length width, const Setting& setting) const {
  return arranged(width, setting)->measure(width, setting);
}

void Ends::place(const Rect& box, const Setting& setting, Frame& frame) const {
  arranged(box.size.width, setting)->place(box, setting, frame);
}

std::vector<Block::Part> Ends::parts(Length width, const Setting& setting) const {
  return arranged(width, setting)->parts(width, setting);
}
}  // namespace furnish
