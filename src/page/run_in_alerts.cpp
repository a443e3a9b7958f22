#include "page/run_in_alerts.h"

#include <algorithm>

#include "page/stack.h"

namespace furnish {
namespace {
/// In parts of the rhythm: beside the word in its panel, above and below the text, the thick bar,
/// and from an edge's bar to the text.
constexpr double inside = 0.4, padding = 0.3, bar = 0.5, clear = 0.5;
constexpr Length hairline = Length::mm(0.35);
}  // namespace

class RunInAlerts::Row final : public Block {
 public:
  /// `stretch`: its part of spare room.
  Row(AlertEntry alert, int stretch)
      : Block(alert.origin),
        gravity_(alert.gravity),
        wordless_(alert.word.empty()),
        stretch_(stretch) {
    const bool black = gravity_ == Gravity::row, panel = gravity_ == Gravity::panel,
               grave = gravity_ != Gravity::hairline;
    TextStyle word_style{alert.word_role, grave ? Face::bold : Face::semibold};
    word_style.ink = black || panel ? Ink::paper : Ink::text;
    word_style.structure = Structure::label;
    word_ = std::make_shared<Paragraph>(std::move(alert.word), word_style);
    TextStyle style{alert.role, grave ? Face::bold : Face::semibold};
    style.ink = black ? Ink::paper : Ink::text;
    std::vector<TextSpan> spans{{std::move(alert.statement)}};
    if (!alert.action.empty()) {
      const Role role = alert.role == Role::alert ? Role::action : alert.role;
      spans.push_back({" " + alert.action, Face::regular, role});
    }
    if (!alert.apart.empty()) {
      TextStyle other = style;
      other.language = alert.apart.language;
      apart_ = paragraph(std::move(alert.apart.spans), std::move(other), origin());
    }
    says_ = std::make_shared<Paragraph>(std::move(spans), style, origin());
    says_->indent_first_line([this](const Setting& setting) { return indent(setting); });
  }

  Extent measure(Length width, const Setting& setting) const override {
    const Length width_inside = width - left(setting) - right(setting);
    const Extent says = says_->measure(width_inside, setting);
    const Extent apart = apart_ ? apart_->measure(width_inside, setting) : Extent{};
    const Length pads = scaled(setting.rhythm, padding) * 2;
    Extent extent{says.least + apart.least + pads, says.wanted + apart.wanted + pads, stretch_};
    extent.baseline = says.baseline + pads / 2;
    extent.last_baseline =
        (apart_ ? says.wanted + apart.last_baseline : says.last_baseline) + pads / 2;
    extent.too_wide = std::max(says.too_wide, apart.too_wide);
    return extent;
  }

  void place(const Rect& box, const Setting& setting, Frame& frame) const override {
    const Length width = box.size.width - left(setting) - right(setting);
    const Extent says = says_->measure(width, setting);
    const Extent word = word_->measure(word_width(setting), setting);
    const Extent apart = apart_ ? apart_->measure(width, setting) : Extent{};
    const Length top = box.top() + (box.size.height - says.wanted - apart.wanted) / 2;
    const Length baseline = top + says.baseline;
    device(box, baseline, word, setting, frame);
    const TagScope tag(frame, Structure::item);
    const Length x =
        box.left() + (gravity_ == Gravity::panel ? scaled(setting.rhythm, inside) : left(setting));
    word_->place({{x, baseline - word.baseline}, {word_width(setting), word.wanted}}, setting,
                 frame);
    says_->place({{box.left() + left(setting), top}, {width, says.wanted}}, setting, frame);
    if (!apart_) return;
    apart_->place({{box.left() + left(setting), top + says.wanted}, {width, apart.wanted}}, setting,
                  frame);
  }

 private:
  Length word_width(const Setting& setting) const { return word_->natural_width(setting); }
  /// From the row's edge to the text's.
  Length left(const Setting& setting) const {
    return gravity_ == Gravity::panel ? Length{} : scaled(setting.rhythm, bar + clear);
  }
  Length right(const Setting& setting) const {
    return gravity_ == Gravity::row ? scaled(setting.rhythm, clear) : Length{};
  }
  Length indent(const Setting& setting) const {
    if (wordless_) return {};
    const Length ground =
        gravity_ == Gravity::panel ? scaled(setting.rhythm, inside) * 2 : Length{};
    return word_width(setting) + ground + scaled(setting.rhythm, 0.6);
  }

  void device(const Rect& box, Length baseline, const Extent& word, const Setting& setting,
              Frame& frame) const {
    Rect area = box;
    if (gravity_ == Gravity::panel) {
      const Length drop = scaled(setting.rhythm, 0.1);
      area = {{box.left(), baseline - word.baseline - drop},
              {word_width(setting) + scaled(setting.rhythm, inside) * 2, word.wanted + drop * 2}};
    } else if (gravity_ == Gravity::bar) {
      area.size.width = scaled(setting.rhythm, bar);
    } else if (gravity_ == Gravity::hairline) {
      area.size.width = hairline;
    }
    frame.marks.emplace_back(FillMark{area, Ink::text});
  }

  Gravity gravity_;
  bool wordless_;
  int stretch_;
  std::shared_ptr<Paragraph> word_, says_;
  BlockPtr apart_;  ///< null if all is in the page's language
};

RunInAlerts::RunInAlerts(std::vector<AlertEntry> alerts, Length rule_above, Origin origin,
                         Rules rules)
    : Block(std::move(origin)) {
  if (alerts.empty()) return;
  std::vector<BlockPtr> blocks;
  if (rule_above > Length{}) blocks.push_back(std::make_shared<Rule>(rule_above));
  for (std::size_t i = 0; i < alerts.size(); ++i) {
    const bool black_meet = alerts[i].gravity == Gravity::row && i + 1 < alerts.size() &&
                            alerts[i + 1].gravity == Gravity::row;
    // Between rules it fills what they hold; without, its bar would say more than its words.
    blocks.push_back(std::make_shared<Row>(std::move(alerts[i]), rules == Rules::none ? 0 : 1));
    if (rules == Rules::none) continue;
    blocks.push_back(std::make_shared<Rule>(rule_group, black_meet ? Ink::paper : Ink::text));
  }
  stack_ = std::make_shared<Column>(std::move(blocks), Origin{}, Structure::list);
}

Extent RunInAlerts::measure(Length width, const Setting& setting) const {
  return stack_ ? stack_->measure(width, setting) : Extent{};
}

void RunInAlerts::place(const Rect& box, const Setting& setting, Frame& frame) const {
  if (stack_) stack_->place(box, setting, frame);
}

std::vector<Block::Part> RunInAlerts::parts(Length width, const Setting& setting) const {
  return stack_ ? stack_->parts(width, setting) : std::vector<Part>{};
}
}  // namespace furnish
