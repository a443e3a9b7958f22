#include "sheet/day_maker.h"

#include <algorithm>
#include <cstdlib>
#include <utility>

#include "base/text.h"
#include "page/stack.h"
#include "sheet/alerts.h"
#include "sheet/day_lists.h"
#include "sheet/terms.h"

namespace furnish {
namespace {
constexpr Length column_gutter = 5_mm;

void append(std::vector<BlockPtr>& out, std::vector<BlockPtr> more) {
  std::ranges::move(more, std::back_inserter(out));
}

BlockPtr list_of(std::vector<BlockPtr> items) {
  return std::make_shared<Column>(std::move(items), Origin{}, Structure::list);
}

BlockPtr listed_rows(const std::vector<BlockPtr>& rows) {
  std::vector<BlockPtr> out;
  for (const BlockPtr& row : rows) {
    // The first of columns beside each other stand at one height.
    const int stretch = out.empty() ? 0 : 1;
    if (!out.empty()) out.push_back(std::make_shared<Rule>(rule_row, Ink::quiet));
    out.push_back(std::make_shared<Gap>(0.25, 0.15, stretch));
    out.push_back(row);
    out.push_back(std::make_shared<Gap>(0.25, 0.15, 1));
  }
  out.push_back(std::make_shared<Rule>(rule_group));
  return list_of(std::move(out));
}
}  // namespace

std::size_t DayMaker::bookings() const {
  std::size_t out = 0;
  for (const DayBlock& block : plan_.blocks) out += block.rows.size();
  return out;
}

std::vector<std::size_t> DayMaker::cuts() const {
  std::vector<std::size_t> out;
  std::size_t at = 0;
  for (const DayBlock& block : plan_.blocks) out.push_back(at += block.rows.size());
  const auto all = static_cast<std::ptrdiff_t>(at);
  std::ranges::sort(out, {}, [all](std::size_t cut) {
    return std::abs(2 * static_cast<std::ptrdiff_t>(cut) - all);
  });
  return out;
}

BlockPtr DayMaker::whole(DayDetail detail) const {
  std::vector<BlockPtr> out = head();
  append(out, blocks(0, bookings(), detail));
  append(out, lists());
  return column(std::move(out));
}

std::vector<BlockPtr> DayMaker::front(std::size_t cut, DayDetail detail) const {
  std::vector<BlockPtr> out = head();
  append(out, blocks(0, cut, detail));
  return out;
}

std::vector<BlockPtr> DayMaker::back(std::size_t cut, DayDetail detail) const {
  std::vector<BlockPtr> out = blocks(cut, bookings(), detail);
  append(out, lists());
  return {column(std::move(out))};
}

std::vector<ColumnItem> DayMaker::items(Length width, const Setting& setting, Lists lists) const {
  std::vector<ColumnItem> out;
  const auto height = [&](const BlockPtr& block) { return block->measure(width, setting).wanted; };
  for (const DayBlock& block : plan_.blocks) {
    const Length head = height(block_head(block, true, DayDetail::close));
    for (const DayRow& row : block.rows) {
      const bool opens = &row == &block.rows.front();
      const Length own = height(listed_rows({day_row(row, desk_, DayDetail::close)}));
      out.push_back({opens ? head + own : own, opens, head});
    }
  }
  if (lists == Lists::none) return out;
  const std::vector<Entry> all = entries();
  for (std::size_t i = 0; i < all.size(); ++i) {
    const bool opens = i == 0 || all[i].head != all[i - 1].head;
    const Length head = height(list_head(all[i].head)) + setting.rhythm, own = height(all[i].block);
    out.push_back({opens ? head + own : own, opens, head});
  }
  return out;
}

BlockPtr DayMaker::two_columns(std::size_t first, std::size_t second, std::size_t end) const {
  return std::make_shared<Beside>(
      std::vector<Beside::Cell>{{one_column(first, second)}, {one_column(second, end)}},
      column_gutter, Beside::Line::top);
}

std::vector<BlockPtr> DayMaker::pieces(DayDetail detail) const {
  std::vector<BlockPtr> out{column(head())};
  for (const DayBlock& block : plan_.blocks) {
    for (const DayRow& row : block.rows) {
      const BlockPtr one = listed_rows({day_row(row, desk_, detail, groomer(block))});
      out.push_back(&row == &block.rows.front() ? column({block_head(block, false, detail), one})
                                                : one);
    }
  }
  const std::vector<Entry> all = entries();
  for (std::size_t i = 0; i < all.size(); ++i) {
    const BlockPtr one = list_of({all[i].block});
    const bool opens = i == 0 || all[i].head != all[i - 1].head;
    out.push_back(opens ? column({list_head(all[i].head), one}) : one);
  }
  return out;
}

FootText DayMaker::foot() const {
  const std::string& salon = desk_.salon.name;
  const std::string legend = say(Phrase::day_legend);
  return {salon.empty() ? legend : desk_.voice.words.written(salon) + "\u00A0· " + legend, {}};
}

std::string DayMaker::say(Phrase phrase, const std::vector<WordArgument>& arguments) const {
  return desk_.voice.words.say(phrase, arguments);
}

std::vector<BlockPtr> DayMaker::head() const {
  TextStyle style{Role::title, Face::bold};
  style.structure = Structure::title;
  style.leading = 1.0;
  TextStyle beside{Role::subtitle};
  beside.align = Align::end;
  DayBlock all;
  for (const DayBlock& block : plan_.blocks) all.take(block);
  std::string sums = day_sums(all, DayDetail::tools, desk_.voice);
  std::vector<BlockPtr> out{
      std::make_shared<Ends>(
          paragraph(capitalised(desk_.voice.locale.day_and_month(desk_.day, desk_.day)), style),
          paragraph(std::move(sums), beside), 4_mm),
      std::make_shared<Rule>(rule_name)};
  if (const std::string unread = unread_text(plan_, desk_.voice); !unread.empty()) {
    out.push_back(paragraph(unread, TextStyle{Role::action, Face::bold}));
  }
  if (std::string unread = salon_unread_text(plan_.salon_unread, desk_.voice.words);
      !unread.empty()) {
    out.push_back(paragraph(std::move(unread), TextStyle{Role::action, Face::bold}));
  }
  if (plan_.closed) {
    out.push_back(paragraph(say(Phrase::day_closed), TextStyle{Role::action, Face::bold}));
  }
  return out;
}

std::string DayMaker::groomer(const DayBlock& block) const {
  return block.groomer.empty() ? say(Phrase::day_no_groomer)
                               : desk_.voice.words.written(block.groomer);
}

BlockPtr DayMaker::block_head(const DayBlock& block, bool continued, DayDetail detail) const {
  TextStyle style{Role::alert, Face::bold};
  style.structure = Structure::heading;
  style.leading = 1.1;
  TextStyle beside{Role::body};
  beside.align = Align::end;
  const std::string name =
      continued ? say(Phrase::day_continued, {groomer(block)}) : groomer(block);
  return column(
      {std::make_shared<Ends>(paragraph(name, style),
                              paragraph(day_sums(block, detail, desk_.voice), beside), 4_mm),
       std::make_shared<Rule>(rule_head)});
}

std::vector<BlockPtr> DayMaker::blocks(std::size_t from, std::size_t to, DayDetail detail) const {
  std::vector<BlockPtr> out;
  std::size_t number = 0;
  for (const DayBlock& block : plan_.blocks) {
    std::vector<BlockPtr> rows;
    const std::size_t first = number;
    for (const DayRow& row : block.rows) {
      if (number >= from && number < to) rows.push_back(day_row(row, desk_, detail));
      ++number;
    }
    if (rows.empty()) continue;
    // Columns beside each other begin at one height.
    out.push_back(std::make_shared<Gap>(0.8, 0.4, out.empty() ? 0 : 1));
    out.push_back(block_head(block, first < from, detail));
    out.push_back(listed_rows(rows));
  }
  return out;
}

BlockPtr DayMaker::one_column(std::size_t from, std::size_t to) const {
  std::vector<BlockPtr> out = blocks(from, std::min(to, bookings()), DayDetail::close);
  const std::vector<Entry> all = entries();
  std::vector<BlockPtr> some;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const std::size_t number = bookings() + i;
    if (number < from || number >= to) continue;
    if (some.empty()) {
      out.push_back(std::make_shared<Gap>(0.8, 0.4, out.empty() ? 0 : 1));
      out.push_back(list_head(all[i].head));
    }
    some.push_back(all[i].block);
    const bool last = number + 1 == to || i + 1 == all.size() || all[i + 1].head != all[i].head;
    if (last) out.push_back(list_of(std::exchange(some, {})));
  }
  out.push_back(std::make_shared<Gap>(0, 0, 1));
  return column(std::move(out));
}

std::vector<DayMaker::Entry> DayMaker::entries() const {
  std::vector<Entry> out;
  for (BlockPtr& one : mix_list(plan_, desk_.voice)) {
    out.push_back({Phrase::day_head_mix, std::move(one)});
  }
  for (BlockPtr& one : call_list(plan_, desk_.salon, desk_.day, desk_.voice)) {
    out.push_back({Phrase::day_head_calls, std::move(one)});
  }
  return out;
}

std::vector<BlockPtr> DayMaker::stacked_lists() const {
  std::vector<BlockPtr> out;
  const std::vector<Entry> all = entries();
  for (const Phrase head : {Phrase::day_head_mix, Phrase::day_head_calls}) {
    std::vector<BlockPtr> own;
    for (const Entry& one : all) {
      if (one.head == head) own.push_back(one.block);
    }
    if (!own.empty()) out.push_back(column({list_head(head), list_of(std::move(own))}));
  }
  return out;
}

BlockPtr DayMaker::list_head(Phrase phrase) const {
  return column({heading(say(phrase), Role::action, Face::bold), std::make_shared<Rule>(rule_head),
                 std::make_shared<Gap>(0.2, 0.1, 0)});
}

std::vector<BlockPtr> DayMaker::lists() const {
  const std::vector<BlockPtr> all = stacked_lists();
  if (all.empty()) return {};
  const BlockPtr gap = std::make_shared<Gap>(1, 0.5, 1);
  if (all.size() == 1) return {gap, all.front()};
  return {gap, std::make_shared<Beside>(std::vector<Beside::Cell>{{all.front()}, {all.back()}},
                                        6_mm, Beside::Line::top)};
}
}  // namespace furnish
