#include "page/alerts.h"

#include <algorithm>

#include "page/stack.h"

namespace furnish {
namespace {
/// In parts of the rhythm: above and below the text.
constexpr double padding = 0.45;
constexpr Length hairline = Length::mm(0.35);

/// In parts of the rhythm: before a word in its panel and after it, from the panel to the text, and
/// the width of the thick bar.
struct Air {
  double before, after, gutter, bar;
  double around() const { return before + after; }
};
/// A word as large as a label stands closer, in the labels' column.
constexpr Air air_around(Role word) {
  return word == Role::label ? Air{0.5, label_word_air - 0.5, label_gutter, 0.32}
                             : Air{0.75, 0.75, 1, 0.5};
}

TextStyle style(Role role, Face face, Ink ink, Structure structure) {
  return {.role = role, .face = face, .ink = ink, .structure = structure};
}
}  // namespace

class Alerts::Row final : public Block {
 public:
  /// `joins` is what of its ground lies over the rules above and below, so that no seam shows.
  Row(AlertEntry alert, std::shared_ptr<const LabelColumn> column, Actions actions, Insets joins)
      : Block(std::move(alert.origin)),
        gravity_(alert.gravity),
        air_(air_around(alert.word_role)),
        joins_(joins),
        column_(std::move(column)) {
    const Ink ink = gravity_ == Gravity::row ? Ink::paper : Ink::text,
              word_ink = gravity_ == Gravity::panel ? Ink::paper : ink;
    const bool grave = gravity_ != Gravity::hairline;
    word_ = paragraph(
        std::move(alert.word),
        style(alert.word_role, grave ? Face::bold : Face::semibold, word_ink, Structure::label));
    const BlockPtr statement =
        paragraph(std::move(alert.statement),
                  style(alert.role, grave ? Face::bold : Face::semibold, ink, Structure::paragraph),
                  origin());
    if (alert.action.empty()) {
      says_ = statement;
      return;
    }
    const BlockPtr action = paragraph(std::move(alert.action),
                                      style(alert.role == Role::alert ? Role::action : alert.role,
                                            Face::regular, ink, Structure::paragraph),
                                      origin());
    if (actions == Actions::below) {
      says_ = std::make_shared<Column>(std::vector<BlockPtr>{statement, action});
    } else {
      says_ =
          std::make_shared<Beside>(std::vector<Beside::Cell>{{statement}, {action}}, Length::mm(4));
    }
  }

  Gravity gravity() const { return gravity_; }

  Extent measure(Length width, const Setting& setting) const override {
    const Layout at = layout(width, setting);
    const Length high = at.height + scaled(setting.rhythm, padding) * 2;
    Extent extent{high, high, 1};
    extent.baseline = scaled(setting.rhythm, padding) + at.says_drop + at.says.baseline;
    extent.last_baseline = extent.baseline - at.says.baseline + at.says.last_baseline;
    extent.too_wide = std::max(at.word.too_wide, at.says.too_wide);
    return extent;
  }

  void place(const Rect& box, const Setting& setting, Frame& frame) const override {
    const Layout at = layout(box.size.width, setting);
    const Length edge = column_->width(box.size.width, setting);
    const Length panel = edge - scaled(setting.rhythm, air_.gutter);
    device({box.origin, {panel, box.size.height}}, box, setting, frame);
    const Length top = box.top() + (box.size.height - at.height) / 2;
    const TagScope tag(frame, Structure::item);
    word_->place({{box.left() + scaled(setting.rhythm, air_.before), top + at.word_drop},
                  {word_width(box.size.width, setting), at.word.wanted}},
                 setting, frame);
    says_->place({{box.left() + edge, top + at.says_drop},
                  {says_width(box.size.width, setting), at.says.wanted}},
                 setting, frame);
  }

 private:
  struct Layout {
    Extent word, says;
    Length word_drop, says_drop, height;
  };

  Length word_width(Length width, const Setting& setting) const {
    return column_->width(width, setting) - scaled(setting.rhythm, air_.gutter + air_.around());
  }
  /// White text keeps clear of the end of its ground.
  Length says_width(Length width, const Setting& setting) const {
    const Length clear = gravity_ == Gravity::row ? scaled(setting.rhythm, 0.75) : Length{};
    return width - column_->width(width, setting) - clear;
  }

  Layout layout(Length width, const Setting& setting) const {
    Layout at;
    at.word = word_->measure(word_width(width, setting), setting);
    at.says = says_->measure(says_width(width, setting), setting);
    const Length line = std::max(at.word.baseline, at.says.baseline);
    at.word_drop = line - at.word.baseline;
    at.says_drop = line - at.says.baseline;
    at.height = std::max(at.word_drop + at.word.wanted, at.says_drop + at.says.wanted);
    return at;
  }

  void device(const Rect& panel, const Rect& box, const Setting& setting, Frame& frame) const {
    Rect area = panel;
    switch (gravity_) {
      case Gravity::row:
        area = box;
        break;
      case Gravity::panel:
        break;
      case Gravity::bar:
        area.size.width = scaled(setting.rhythm, air_.bar);
        break;
      case Gravity::hairline:
        area.size.width = hairline;
        break;
    }
    frame.marks.emplace_back(FillMark{outset(area, joins_), Ink::text});
  }

  Gravity gravity_;
  Air air_;
  Insets joins_;
  BlockPtr word_, says_;
  std::shared_ptr<const LabelColumn> column_;
};

Alerts::Alerts(std::vector<AlertEntry> alerts, std::shared_ptr<LabelColumn> column, Actions actions,
               Length rule_above, Origin origin)
    : Block(std::move(origin)) {
  if (alerts.empty()) return;
  std::vector<BlockPtr> blocks;
  if (rule_above > Length{}) blocks.push_back(std::make_shared<Rule>(rule_above));
  Length above = rule_above / 2;
  for (std::size_t i = 0; i < alerts.size(); ++i) {
    const Gravity gravity = alerts[i].gravity;
    const Role word = alerts[i].word_role;
    column->add(alerts[i].word, word, gravity == Gravity::hairline ? Face::semibold : Face::bold,
                air_around(word).around());
    // A black rule would not be seen between two black rows.
    const bool black_meet =
        gravity == Gravity::row && i + 1 < alerts.size() && alerts[i + 1].gravity == Gravity::row;
    const Length below = black_meet ? Length{} : rule_group / 2;
    blocks.push_back(
        std::make_shared<Row>(std::move(alerts[i]), column, actions, Insets{above, {}, below, {}}));
    blocks.push_back(std::make_shared<Rule>(rule_group, black_meet ? Ink::paper : Ink::text));
    above = below;
  }
  stack_ = std::make_shared<Column>(std::move(blocks), Origin{}, Structure::list);
}

Extent Alerts::measure(Length width, const Setting& setting) const {
  return stack_ ? stack_->measure(width, setting) : Extent{};
}

void Alerts::place(const Rect& box, const Setting& setting, Frame& frame) const {
  if (stack_) stack_->place(box, setting, frame);
}

std::vector<Block::Part> Alerts::parts(Length width, const Setting& setting) const {
  return stack_ ? stack_->parts(width, setting) : std::vector<Part>{};
}
}  // namespace furnish
