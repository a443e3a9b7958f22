#include "page/keep_whole.h"

#include <algorithm>

namespace furnish {
namespace {
/// Bytes of a word that is longer than any name.
constexpr std::size_t longest_word = 40;
}  // namespace

WholeWord::WholeWord(std::vector<TextSpan> text, TextSpan word, TextStyle style, Origin origin)
    : Block(origin),
      text_(paragraph(std::move(text), style, std::move(origin))),
      word_(paragraph({word}, style)),
      absurd_(word.text.size() > longest_word) {}

Extent WholeWord::measure(Length width, const Setting& setting) const {
  Extent extent = text_->measure(width, setting);
  if (!absurd_) {
    extent.too_wide = std::max(extent.too_wide, word_->natural_width(setting) - width);
  }
  return extent;
}

void WholeWord::place(const Rect& box, const Setting& setting, Frame& frame) const {
  text_->place(box, setting, frame);
}

Length WholeWord::natural_width(const Setting& setting) const {
  return text_->natural_width(setting);
}

SharesOrBelow::SharesOrBelow(Share first, Share second, Length gutter)
    : first_(std::move(first)),
      second_(std::move(second)),
      gutter_(gutter),
      beside_(std::make_shared<Beside>(
          std::vector<Beside::Cell>{{first_.block, std::nullopt, first_.flex},
                                    {second_.block, std::nullopt, second_.flex}},
          gutter)),
      below_(std::make_shared<Column>(std::vector<BlockPtr>{first_.block, second_.block})) {}

BlockPtr SharesOrBelow::arranged(Length width, const Setting& setting) const {
  const Length own = (width - gutter_) * first_.flex / (first_.flex + second_.flex);
  if (first_.block->natural_width(setting) > own) return below_;
  const Length rest = width - gutter_ - own;
  const auto height = [&](Length room) { return second_.block->measure(room, setting).wanted; };
  return height(rest) > height(width) ? below_ : beside_;
}

Extent SharesOrBelow::measure(Length width, const Setting& setting) const {
  return arranged(width, setting)->measure(width, setting);
}

void SharesOrBelow::place(const Rect& box, const Setting& setting, Frame& frame) const {
  arranged(box.size.width, setting)->place(box, setting, frame);
}

std::vector<Block::Part> SharesOrBelow::parts(Length width, const Setting& setting) const {
  return arranged(width, setting)->parts(width, setting);
}
}  // namespace furnish
