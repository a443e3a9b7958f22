#include "page/rows.h"

#include <algorithm>

#include "page/shortest.h"
#include "page/stack.h"

namespace furnish {
namespace {
constexpr double row_padding = 0.3;  ///< above and below, of the rhythm
constexpr Length half_gutter = Length::mm(4);
}  // namespace

void LabelColumn::add(std::string label, Role role, Face face, double indent) {
  if (fixed_) return;
  labels_.push_back(
      {std::make_shared<Paragraph>(
           std::move(label), TextStyle{.role = role, .face = face, .breaking = Breaking::never}),
       indent});
}

Length LabelColumn::width(Length width, const Setting& setting) const {
  Length widest;
  if (fixed_) return std::min(*fixed_, width * 11 / 20);
  for (const Label& label : labels_) {
    widest =
        std::max(widest, label.text->natural_width(setting) + scaled(setting.rhythm, label.indent));
  }
  // In large type a label would touch what it labels.
  const Length gutter = std::max(setting.rhythm, setting.type[Role::label].length() / 2);
  return std::min(widest + gutter, width * 2 / 5);
}

/// Label and content on one baseline, with room above and below that spare space adds to.
class Rows::Row final : public Block {
 public:
  Row(LabelRow row, std::shared_ptr<const LabelColumn> column, Labels labels)
      : Block(std::move(row.origin)),
        label_(std::move(row.label),
               TextStyle{.role = Role::label,
                         .face = Face::semibold,
                         .structure =
                             labels == Labels::headings ? Structure::heading : Structure::label}),
        content_(std::move(row.content)),
        column_(std::move(column)),
        labels_(labels) {}

  Extent measure(Length width, const Setting& setting) const override {
    const Layout at = layout(width, setting);
    const Length padding = scaled(setting.rhythm, row_padding);
    Extent extent{at.least + padding * 2, at.wanted + padding * 2, 1};
    extent.baseline = padding + std::max(at.label_drop + at.label.baseline,
                                         at.content_drop + at.content.baseline);
    extent.last_baseline = padding + at.content_drop + at.content.last_baseline;
    extent.too_wide = at.content.too_wide;
    return extent;
  }

  void place(const Rect& box, const Setting& setting, Frame& frame) const override {
    const Layout at = layout(box.size.width, setting);
    const Length padding = std::max(scaled(setting.rhythm, row_padding),
                                    (box.size.height - at.wanted) / 2),
                 top = box.top() + padding, edge = column_->width(box.size.width, setting);
    const TagScope tag(frame, labels_ == Labels::headings ? Structure::section : Structure::item);
    label_.place({{box.left(), top + at.label_drop}, {edge - setting.rhythm / 2, at.label.wanted}},
                 setting, frame);
    const Length room = std::max(at.content.least, box.bottom() - padding - top - at.content_drop);
    content_->place({{box.left() + edge, top + at.content_drop}, {box.size.width - edge, room}},
                    setting, frame);
  }

  std::vector<Part> parts(Length width, const Setting& setting) const override {
    return {{content_.get(), layout(width, setting).content}};
  }

 private:
  struct Layout {
    Extent label, content;
    Length label_drop, content_drop, least, wanted;
  };

  Layout layout(Length width, const Setting& setting) const {
    const Length edge = column_->width(width, setting);
    Layout at;
    at.label = label_.measure(edge - setting.rhythm / 2, setting);
    at.content = content_->measure(width - edge, setting);
    if (at.content.baseline > Length{}) {
      const Length line = std::max(at.label.baseline, at.content.baseline);
      at.label_drop = line - at.label.baseline;
      at.content_drop = line - at.content.baseline;
    }
    const Length label_end = at.label_drop + at.label.wanted;
    at.least = std::max(label_end, at.content_drop + at.content.least);
    at.wanted = std::max(label_end, at.content_drop + at.content.wanted);
    return at;
  }

  Paragraph label_;
  BlockPtr content_;
  std::shared_ptr<const LabelColumn> column_;
  Labels labels_;
};

Rows::Rows(std::vector<LabelRow> rows, std::shared_ptr<LabelColumn> column, Close close,
           Origin origin, Labels labels)
    : Block(std::move(origin)) {
  std::vector<BlockPtr> blocks;
  const auto made = [&](LabelRow& row) -> BlockPtr {
    column->add(row.label);
    return std::make_shared<Row>(std::move(row), column, labels);
  };
  const auto line = std::make_shared<Rule>(rule_row, Ink::quiet);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const bool paired = rows[i].with_next && i + 1 < rows.size();
    BlockPtr block = made(rows[i]);
    if (paired) {
      const BlockPtr next = made(rows[++i]);
      const BlockPtr under = std::make_shared<Column>(std::vector<BlockPtr>{block, line, next});
      block = std::make_shared<Shortest>(std::vector<BlockPtr>{
          under,
          std::make_shared<Beside>(std::vector<Beside::Cell>{{block}, {next}}, half_gutter)});
    }
    blocks.push_back(std::move(block));
    blocks.push_back(line);
  }
  if (blocks.empty()) return;
  blocks.pop_back();
  if (close == Close::rule) blocks.push_back(std::make_shared<Rule>(rule_group));
  stack_ = std::make_shared<Column>(
      std::move(blocks), Origin{},
      labels == Labels::items ? std::optional(Structure::list) : std::nullopt);
}

Extent Rows::measure(Length width, const Setting& setting) const {
  return stack_ ? stack_->measure(width, setting) : Extent{};
}

void Rows::place(const Rect& box, const Setting& setting, Frame& frame) const {
  if (stack_) stack_->place(box, setting, frame);
}

std::vector<Block::Part> Rows::parts(Length width, const Setting& setting) const {
  return stack_ ? stack_->parts(width, setting) : std::vector<Part>{};
}
}  // namespace furnish
