#include "sheet/card_maker.h"

#include <algorithm>

#include "base/text.h"
#include "page/around_corner.h"
#include "page/forms.h"
#include "page/list.h"
#include "page/picture.h"
#include "page/run_in_alerts.h"
#include "page/stack.h"
#include "sheet/alerts.h"
#include "sheet/card_figure.h"
#include "sheet/card_ticks.h"
#include "sheet/hurt_line.h"
#include "sheet/pieces.h"
#include "sheet/shown.h"
#include "sheet/terms.h"
#include "sheet/who.h"

namespace furnish {
namespace {
/// A row as one text that begins with its label; a diamond stands before what differs.
std::vector<TextSpan> run_in(const SheetRow& row) {
  std::vector<TextSpan> spans;
  if (!row.label.empty()) {
    spans.push_back({without_breaks(row.label) + after_label, Face::semibold, Role::label});
  }
  const bool headed = !row.text.empty();
  std::ranges::copy(row.text, std::back_inserter(spans));
  for (const SheetRow::Point& point : row.points) {
    const bool first = &point == row.points.data() && !headed;
    if (point.differs) {
      spans.push_back({first ? "◆\u00A0" : " ◆\u00A0"});
    } else if (!first) {
      spans.push_back({" · "});
    }
    std::ranges::copy(point.text, std::back_inserter(spans));
  }
  return spans;
}

/// A row beside its label; a diamond stands before what differs.
LabelRow beside_label(const CardRow& row, bool brief) {
  std::vector<BlockPtr> parts;
  const TextStyle style{row.role};
  if (brief && !row.points.empty()) {
    SheetRow unnamed = row;
    unnamed.label.clear();
    return {row.label, paragraph(run_in(unnamed), style, row.origin()), row.origin()};
  }
  if (!row.text.empty()) parts.push_back(paragraph(row.text, style, row.origin()));
  if (!row.points.empty()) {
    std::vector<BulletList::Item> items;
    for (const SheetRow::Point& point : row.points) {
      items.push_back({paragraph(point.text, style, row.origin()),
                       point.differs ? Marker::diamond : Marker::none});
    }
    parts.push_back(std::make_shared<BulletList>(std::move(items), row.origin()));
  }
  // A trim is a sentence to write, which wants a line of its own.
  if (row.role == Role::action) {
    for (const std::string& label : row.hand_lines) {
      parts.push_back(std::make_shared<BlankLine>(label, 1, row.origin()));
    }
  }
  if (row.asks) parts.push_back(std::make_shared<BlankLine>(std::string(), 1, row.origin()));
  return {
      row.label,
      parts.size() == 1 ? parts.front() : std::make_shared<Column>(std::move(parts), row.origin()),
      row.origin(), row.with_next};
}

bool says_something(const CardRow& row, bool asks) {
  if (row.asks) return asks;
  const bool writes = row.role == Role::action && !row.hand_lines.empty();
  return !row.text.empty() || !row.points.empty() || writes;
}
}  // namespace

CardMaker::CardMaker(const SheetDesk& desk, Length edge)
    : desk_(desk),
      input_(desk.input),
      voice_(desk.voice),
      edge_(edge),
      full_{card_alerts(desk), card_rows(desk)},
      figure_(no_touch_figure(desk)),
      head_(sheet_head(input_.pet, {looks_text(desk), facts_text(desk)}, 5_mm)),
      ticks_(std::make_shared<TickRow>(card_ticks(desk))),
      hand_(hand()) {
  asks_ = std::ranges::any_of(full_.rows, &CardRow::asks) ||
          (is_new_client(input_) && full_.alerts.empty());
}

const CardMaker::Content& CardMaker::content(const CardWay& way) const {
  if (!way.brief) return full_;
  if (!brief_) {
    brief_ = Content{card_alerts(desk_, Notices::in_one), card_rows(desk_, StyleLines::differing)};
  }
  return *brief_;
}

bool CardMaker::has(CardWay::Pictures pictures) const {
  using Pictures = CardWay::Pictures;
  if (pictures == Pictures::none) return true;
  return pictures == Pictures::all ? input_.portrait != nullptr : figure_ != nullptr;
}

template <typename Keeps>
std::vector<AlertEntry> CardMaker::entries(const Content& content, Keeps keeps) const {
  std::vector<AlertEntry> out;
  for (const CardAlert& alert : content.alerts) {
    if (keeps(alert.kept)) out.push_back(alert.entry);
  }
  return out;
}

template <typename Keeps>
std::vector<const CardRow*> CardMaker::rows(const Content& content, CardLayer layer, bool asks,
                                            Keeps keeps) const {
  std::vector<const CardRow*> out;
  for (const CardRow& row : content.rows) {
    if (row.layer == layer && keeps(row.kept) && says_something(row, asks)) out.push_back(&row);
  }
  return out;
}

BlockPtr CardMaker::alerts(const Content& content, const CardWay& way, Front front) const {
  std::vector<AlertEntry> shown = entries(content, [=](Kept one) { return front.keeps(one); });
  if (shown.empty()) {
    if (!content.alerts.empty()) return std::make_shared<Rule>(rule_name);
    if (!way.asks) return no_alerts(desk_, labels());
    std::vector<LabelRow> none{{voice_.words.say(Phrase::label_alerts),
                                column({paragraph(voice_.words.say(Phrase::no_alerts)),
                                        std::make_shared<BlankLine>(std::string())})}};
    return column(
        {std::make_shared<Rule>(rule_name), std::make_shared<Rows>(std::move(none), labels())});
  }
  if (way.signals == CardWay::Signals::run_in) {
    return std::make_shared<RunInAlerts>(std::move(shown), rule_name);
  }
  return std::make_shared<Alerts>(std::move(shown), labels(), Alerts::Actions::below, rule_name);
}

BlockPtr CardMaker::in_columns(std::vector<LabelRow> rows) const {
  return std::make_shared<Rows>(std::move(rows), labels(), Rows::Close::open, Origin{},
                                Rows::Labels::headings);
}

BlockPtr CardMaker::layer(const std::vector<const CardRow*>& rows, bool brief) const {
  std::vector<LabelRow> out;
  for (const CardRow* row : rows) {
    auto& made = beside_[{row, brief}];
    if (made.content == nullptr) made = beside_label(*row, brief);
    out.push_back(made);
  }
  return in_columns(std::move(out));
}

/// Lines for what is not known, and for who did the work, two by two.
BlockPtr CardMaker::hand() const {
  std::vector<LabelRow> lines;
  const auto add = [&](const std::string& label, const Origin& origin) {
    lines.push_back({label, std::make_shared<BlankLine>(std::string(), 1, origin), origin});
  };
  for (const CardRow& row : full_.rows) {
    if (row.role == Role::action) continue;
    for (const std::string& label : row.hand_lines) add(label, row.origin());
  }
  add(voice_.words.say(Phrase::initials), {});
  std::vector<BlockPtr> out;
  for (std::size_t i = 0; i < lines.size(); i += 2) {
    std::vector<LabelRow> pair{std::move(lines[i])};
    if (i + 1 < lines.size()) {
      pair.front().with_next = true;
      pair.push_back(std::move(lines[i + 1]));
    }
    out.push_back(in_columns(std::move(pair)));
  }
  return column(std::move(out));
}

std::vector<BlockPtr> CardMaker::front(const CardWay& way, Front kept) const {
  const Content& from = content(way);
  const auto keeps = [&](Kept one) { return kept.keeps(one); };
  std::vector<BlockPtr> blocks{head_, alerts(from, way, kept)};
  if (way.pictures == CardWay::Pictures::all) blocks = with_portrait(std::move(blocks));
  const auto dog = rows(from, CardLayer::dog, way.asks, keeps),
             work = rows(from, CardLayer::work, way.asks, keeps);
  if (way.pictures != CardWay::Pictures::none && figure_) {
    std::vector<Beside::Cell> cells{{layer(dog, way.brief)}, {figure_, no_touch_width}};
    blocks.push_back(std::make_shared<Gap>(0.25, 0.25, 0));
    blocks.push_back(std::make_shared<Beside>(std::move(cells), Length::mm(4), Beside::Line::top));
  } else if (!dog.empty()) {
    blocks.push_back(layer(dog, way.brief));
  }
  if (!work.empty()) {
    blocks.push_back(std::make_shared<Gap>(0.25, 0.1, 6));
    blocks.push_back(std::make_shared<Rule>(rule_name));
    blocks.push_back(std::make_shared<Gap>(0.15, 0, 3));
    blocks.push_back(layer(work, way.brief));
  }
  blocks.push_back(std::make_shared<Gap>(0.1, 0, 3));
  blocks.push_back(std::make_shared<Rule>(rule_group));
  if (!keeps(Kept::hand)) return blocks;
  blocks.push_back(std::make_shared<Gap>(0.6, 0.4, 4));
  blocks.push_back(ticks_);
  blocks.push_back(std::make_shared<Gap>(0.1, 0, 2));
  blocks.push_back(hand_);
  return blocks;
}

/// The photo in the corner, beside the name and what stands under it.
std::vector<BlockPtr> CardMaker::with_portrait(std::vector<BlockPtr> blocks) const {
  constexpr double aspect = 4.0 / 3, share = 0.25;  // of the page's width
  const Length width = scaled(input_.paper.size.width, share), height = scaled(width, 1 / aspect);
  std::string says = input_.pet.name.value;
  for (const TextSpan& span : looks_text(desk_)) {
    says += (says == input_.pet.name.value ? colon(voice_.words) : "") + span.text;
  }
  const auto picture =
      std::make_shared<Picture>(input_.portrait, std::move(says), std::nullopt, aspect, height,
                                height, 0, Origin{"photo", input_.pet.photo_span});
  return {std::make_shared<AroundCorner>(std::move(blocks), picture, Size{width, height},
                                         Length::mm(4), Length::mm(1.5))};
}

template <typename Goes>
std::vector<BlockPtr> CardMaker::pieces(const Content& content, CardWay::Signals signals,
                                        Goes goes) const {
  std::vector<BlockPtr> out;
  const bool hanging = signals == CardWay::Signals::hanging;
  for (const AlertEntry& entry : entries(content, goes)) {
    for (AlertEntry& piece : cut(entry)) {
      out.push_back(std::make_shared<RunInAlerts>(std::vector{std::move(piece)}));
    }
  }
  for (const CardLayer one : {CardLayer::dog, CardLayer::work}) {
    for (const CardRow* row : rows(content, one, false, goes)) {
      std::vector<SheetRow> cut_rows = cut({static_cast<const SheetRow&>(*row)});
      for (SheetRow& piece : cut_rows) {
        const CardRow made{std::move(piece), one, row->kept};
        const BlockPtr block = hanging
                                   ? in_columns({beside_label(made, false)})
                                   : paragraph(run_in(made), TextStyle{made.role}, made.origin());
        out.push_back(column({block, std::make_shared<Gap>(0.3, 0.1, 0),
                              std::make_shared<Rule>(rule_row, Ink::quiet)}));
      }
    }
  }
  if (!goes(Kept::hand)) return out;
  out.push_back(ticks_);
  out.push_back(hand_);
  return out;
}

std::vector<BlockPtr> CardMaker::rest(const CardWay& way, Front front, CardWay::Signals signals,
                                      Other other) const {
  std::vector<BlockPtr> out =
      pieces(content(way), signals, [=](Kept one) { return !front.keeps(one); });
  if (other == Other::needed || out.empty()) return out;
  for (const SheetRow& row : history_rows(desk_)) {
    out.push_back(column({as_text(row, Face::semibold), std::make_shared<Gap>(0.3, 0.1, 0),
                          std::make_shared<Rule>(rule_row, Ink::quiet)}));
  }
  return out;
}

std::vector<BlockPtr> CardMaker::all() const {
  std::vector<BlockPtr> out = plain_head(input_.pet, {looks_text(desk_), facts_text(desk_)});
  if (full_.alerts.empty()) out.push_back(no_alerts_run_in(desk_, "  "));
  // The front of this one, too, begins with what is needed at the door.
  for (const bool door : {true, false}) {
    std::ranges::move(pieces(full_, CardWay::Signals::hanging,
                             [=](Kept one) { return (one == Kept::door) == door; }),
                      std::back_inserter(out));
  }
  return out;
}

BlockPtr CardMaker::hurts() const {
  return hurt_line(entries(full_, [](Kept one) { return one <= Kept::cautions; }),
                   paper_class(input_.paper), capitalised(voice_.words.say(Phrase::other_side)));
}

FootText CardMaker::foot() const {
  std::string right = voice_.locale.long_date(input_.today);
  if (const auto& time = input_.plan.duration) right += " · " + about(time->expected, voice_);
  return {voice_.words.written(input_.salon.name), right};
}
}  // namespace furnish
