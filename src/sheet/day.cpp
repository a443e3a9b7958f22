#include "sheet/day.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>

#include "base/text.h"
#include "page/stack.h"
#include "sheet/day_columns.h"
#include "sheet/day_lists.h"
#include "sheet/day_row.h"
#include "sheet/parts.h"
#include "sheet/pieces.h"
#include "sheet/terms.h"

namespace furnish {
namespace {
constexpr Length open_rhythm = 4_mm, close_rhythm = Length::mm(2.5), tight_rhythm = Length::mm(1.6),
                 column_gutter = 5_mm;
constexpr double close_leading = 0.95, tight_leading = 0.9;

class DayMaker {
 public:
  DayMaker(const DayPlan& plan, const DayDesk& desk) : plan_(plan), desk_(desk) {}

  std::size_t bookings() const {
    std::size_t out = 0;
    for (const DayBlock& block : plan_.blocks) out += block.rows.size();
    return out;
  }
  /// After how many bookings another groomer's begin, those nearest to the middle first.
  std::vector<std::size_t> cuts() const {
    std::vector<std::size_t> out;
    std::size_t at = 0;
    for (const DayBlock& block : plan_.blocks) out.push_back(at += block.rows.size());
    const auto all = static_cast<std::ptrdiff_t>(at);
    std::ranges::sort(out, {}, [all](std::size_t cut) {
      return std::abs(2 * static_cast<std::ptrdiff_t>(cut) - all);
    });
    return out;
  }

  BlockPtr whole(DayDetail detail) const {
    std::vector<BlockPtr> out = head();
    append(out, blocks(0, bookings(), detail));
    append(out, lists());
    return column(std::move(out));
  }
  /// Up to a number of bookings, and what comes after them.
  std::vector<BlockPtr> front(std::size_t cut, DayDetail detail) const {
    std::vector<BlockPtr> out = head();
    append(out, blocks(0, cut, detail));
    return out;
  }
  std::vector<BlockPtr> back(std::size_t cut, DayDetail detail) const {
    std::vector<BlockPtr> out = blocks(cut, bookings(), detail);
    append(out, lists());
    return {column(std::move(out))};
  }

  /// The same in columns, each as high as in a setting of a width.
  std::vector<ColumnItem> items(Length width, const Setting& setting) const {
    std::vector<ColumnItem> out;
    for (const DayBlock& block : plan_.blocks) {
      const Length head = block_head(block, true, DayDetail::close)->measure(width, setting).wanted;
      for (const DayRow& row : block.rows) {
        const bool opens = &row == &block.rows.front();
        const BlockPtr one = listed_rows({day_row(row, desk_, DayDetail::close)});
        const Length height = one->measure(width, setting).wanted;
        out.push_back({opens ? head + height : height, opens, head});
      }
    }
    for (const BlockPtr& list : stacked_lists()) {
      out.push_back({list->measure(width, setting).wanted, true, {}});
    }
    return out;
  }
  /// Two of these columns beside each other, from the items that they begin with.
  BlockPtr two_columns(std::size_t first, std::size_t second, std::size_t end) const {
    return std::make_shared<Beside>(
        std::vector<Beside::Cell>{{one_column(first, second)}, {one_column(second, end)}},
        column_gutter, Beside::Line::top);
  }
  BlockPtr heading_block() const { return column(head()); }
  /// A booking a piece, each with its groomer's name.
  std::vector<BlockPtr> pieces(DayDetail detail) const {
    std::vector<BlockPtr> out{column(head())};
    for (const DayBlock& block : plan_.blocks) {
      for (const DayRow& row : block.rows) {
        const BlockPtr one = listed_rows({day_row(row, desk_, detail, groomer(block))});
        out.push_back(&row == &block.rows.front() ? column({block_head(block, false, detail), one})
                                                  : one);
      }
    }
    const auto add = [&](Phrase head, const std::vector<BlockPtr>& list) {
      for (std::size_t i = 0; i < list.size(); ++i) {
        const BlockPtr one = list_of({list[i]});
        out.push_back(i == 0 ? column({list_head(head), one}) : one);
      }
    };
    add(Phrase::day_head_mix, mix_list(plan_, desk_.voice));
    add(Phrase::day_head_calls, call_list(plan_, desk_.salon, desk_.day, desk_.voice));
    return out;
  }

  FootText foot() const {
    const std::string& salon = desk_.salon.name;
    const std::string legend = say(Phrase::day_legend);
    return {salon.empty() ? legend : desk_.voice.words.written(salon) + "\u00A0· " + legend, {}};
  }

 private:
  std::string say(Phrase phrase, const std::vector<WordArgument>& arguments = {}) const {
    return desk_.voice.words.say(phrase, arguments);
  }
  static void append(std::vector<BlockPtr>& out, std::vector<BlockPtr> more) {
    std::ranges::move(more, std::back_inserter(out));
  }

  std::vector<BlockPtr> head() const {
    TextStyle style{Role::title, Face::bold};
    style.structure = Structure::title;
    style.leading = 1.0;
    TextStyle beside{Role::subtitle};
    beside.align = Align::end;
    DayBlock all;
    for (const DayBlock& block : plan_.blocks) {
      all.rows.insert(all.rows.end(), block.rows.begin(), block.rows.end());
      all.expected += block.expected;
      all.booked += block.booked;
    }
    std::string sums = day_sums(all, DayDetail::tools, desk_.voice);
    std::vector<BlockPtr> out{
        std::make_shared<Ends>(
            paragraph(capitalised(desk_.voice.locale.day_and_month(desk_.day, desk_.day)), style),
            paragraph(std::move(sums), beside), 4_mm),
        std::make_shared<Rule>(rule_name)};
    if (plan_.closed) {
      out.push_back(paragraph(say(Phrase::day_closed), TextStyle{Role::action, Face::bold}));
    }
    return out;
  }

  std::string groomer(const DayBlock& block) const {
    return block.groomer.empty() ? say(Phrase::day_no_groomer)
                                 : desk_.voice.words.written(block.groomer);
  }

  BlockPtr block_head(const DayBlock& block, bool continued, DayDetail detail) const {
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

  static BlockPtr list_of(std::vector<BlockPtr> items) {
    return std::make_shared<Column>(std::move(items), Origin{}, Structure::list);
  }

  static BlockPtr listed_rows(const std::vector<BlockPtr>& rows) {
    std::vector<BlockPtr> out;
    for (const BlockPtr& row : rows) {
      if (!out.empty()) out.push_back(std::make_shared<Rule>(rule_row, Ink::quiet));
      out.push_back(std::make_shared<Gap>(0.25, 0.15, 1));
      out.push_back(row);
      out.push_back(std::make_shared<Gap>(0.25, 0.15, 1));
    }
    out.push_back(std::make_shared<Rule>(rule_group));
    return list_of(std::move(out));
  }

  /// The bookings from one number up to another, under their groomers.
  std::vector<BlockPtr> blocks(std::size_t from, std::size_t to, DayDetail detail) const {
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
      out.push_back(std::make_shared<Gap>(0.8, 0.4, 1));
      out.push_back(block_head(block, first < from, detail));
      out.push_back(listed_rows(rows));
    }
    return out;
  }

  BlockPtr one_column(std::size_t from, std::size_t to) const {
    std::vector<BlockPtr> out = blocks(from, std::min(to, bookings()), DayDetail::close);
    const std::vector<BlockPtr> lists = stacked_lists();
    for (std::size_t i = 0; i < lists.size(); ++i) {
      const std::size_t number = bookings() + i;
      if (number < from || number >= to) continue;
      out.push_back(std::make_shared<Gap>(0.8, 0.4, 1));
      out.push_back(lists[i]);
    }
    out.push_back(std::make_shared<Gap>(0, 0, 1));
    return column(std::move(out));
  }

  std::vector<BlockPtr> stacked_lists() const {
    std::vector<BlockPtr> mixes = mix_list(plan_, desk_.voice),
                          calls = call_list(plan_, desk_.salon, desk_.day, desk_.voice), out;
    if (!mixes.empty()) out.push_back(list(Phrase::day_head_mix, std::move(mixes)));
    if (!calls.empty()) out.push_back(list(Phrase::day_head_calls, std::move(calls)));
    return out;
  }

  BlockPtr list_head(Phrase phrase) const {
    return column({heading(say(phrase), Role::action, Face::bold),
                   std::make_shared<Rule>(rule_head), std::make_shared<Gap>(0.2, 0.1, 0)});
  }

  BlockPtr list(Phrase head, std::vector<BlockPtr> items) const {
    return column({list_head(head), list_of(std::move(items))});
  }

  std::vector<BlockPtr> lists() const {
    const std::vector<BlockPtr> all = stacked_lists();
    if (all.empty()) return {};
    const BlockPtr gap = std::make_shared<Gap>(1, 0.5, 1);
    if (all.size() == 1) return {gap, all.front()};
    return {gap, std::make_shared<Beside>(std::vector<Beside::Cell>{{all.front()}, {all.back()}},
                                          6_mm, Beside::Line::top)};
  }

  const DayPlan& plan_;
  const DayDesk& desk_;
};

/// On two sides, in one column: between two groomers if that can be, else after as many bookings as
/// the front holds. Empty if it takes more.
std::optional<ComposedPage> on_two_sides(PageRequest request, const DayMaker& maker,
                                         TextShaper& shaper) {
  std::vector<std::size_t> cuts = maker.cuts();
  for (std::size_t cut = maker.bookings(); cut > 0; --cut) cuts.push_back(cut);
  request.layouts.clear();
  for (const std::size_t cut : cuts) {
    request.divisions = {{"two sides",
                          [&, cut] { return maker.front(cut, DayDetail::places); },
                          {[&, cut] { return maker.back(cut, DayDetail::places); }},
                          close_rhythm,
                          close_leading}};
    DiagnosticSink unheard;  // another cut is tried
    auto page = compose(request, shaper, unheard);
    if (page && page->more.size() == 1) return page;
  }
  return std::nullopt;
}

/// In two columns a side, on one side or two. Empty if it takes more.
std::optional<ComposedPage> in_columns(PageRequest request, const DayMaker& maker,
                                       TextShaper& shaper, std::size_t sides) {
  const Setting smallest{
      TypeScale(request.roles, shaper.fonts().capital_height(), 0, request.steps), tight_rhythm,
      shaper, Precision::exact, tight_leading};
  const Length width = request.size.width - request.margins.left - request.margins.right;
  const std::vector<ColumnItem> items = maker.items((width - column_gutter) / 2, smallest);
  request.layouts.clear();
  request.divisions.clear();
  for (const ColumnCuts cuts : {ColumnCuts::at_openings, ColumnCuts::anywhere}) {
    const auto starts = column_starts(items, 2 * sides, cuts);
    const auto front = [&, end = sides > 1 ? starts[2] : items.size()] {
      return column({maker.heading_block(), maker.two_columns(0, starts[1], end)});
    };
    if (sides == 1) {
      request.layouts = {{"columns", front, tight_rhythm, tight_leading}};
    } else {
      request.divisions = {{"columns",
                            [&] { return std::vector<BlockPtr>{front()}; },
                            {[&] {
                              return std::vector<BlockPtr>{
                                  maker.two_columns(starts[2], starts[3], items.size())};
                            }},
                            tight_rhythm,
                            tight_leading}};
    }
    DiagnosticSink unheard;  // other columns are tried
    auto page = compose(request, shaper, unheard);
    if (page && page->more.size() + 1 == sides) return page;
  }
  return std::nullopt;
}

/// In one column or two. Empty if it takes more than a side.
std::optional<ComposedPage> on_one_side(PageRequest request, const DayMaker& maker,
                                        TextShaper& shaper) {
  request.layouts = {
      {"open", [&] { return maker.whole(DayDetail::tools); }, open_rhythm},
      {"close", [&] { return maker.whole(DayDetail::places); }, close_rhythm, close_leading},
  };
  DiagnosticSink unheard;  // columns and two sides are tried
  auto page = compose(request, shaper, unheard);
  return page ? std::move(page) : in_columns(std::move(request), maker, shaper, 1);
}
}  // namespace

std::optional<Sheet> make_day(const Salon& salon, const Day& day, const DayPlan& plan,
                              const Paper& paper, const SheetVoice& voice, DiagnosticSink& sink) {
  DayDesk desk{salon, day.date, paper, voice, {}};
  for (const DayBlock& block : plan.blocks) {
    for (const DayRow& row : block.rows) {
      if (row.pet != nullptr) desk.names[row.booking->pet.value] = row.pet->pet.name.value;
    }
  }
  DayDesk short_desk = desk;
  short_desk.alerts = DayAlerts::first;
  const DayMaker maker(plan, desk), short_maker(plan, short_desk);
  const Pet nobody;
  const Plan none;
  const SheetInput input{kinds::day, salon, nobody, none, std::nullopt, day.date, paper};
  const SheetDesk whole{input, voice};
  PageRequest request = page_request(input);
  request.span = day.span;
  const std::string title = voice.words.say(Phrase::day_title, {voice.locale.long_date(day.date)});
  const FootText foot = maker.foot();
  go_on(request, whole, foot, foot, title);
  // Its pages hang beside each other, and are cut: nothing is on the other side.
  request.foot_of = [foot](int side, int sides) {
    return sheet_foot(foot.left, fmt::format("{}/{}", side, sides));
  };
  std::optional<ComposedPage> page;
  for (const DayMaker* const one : {&maker, &short_maker}) {
    if (!page) page = on_one_side(request, *one, voice.shaper);
  }
  for (const DayMaker* const one : {&maker, &short_maker}) {
    if (!page) page = on_two_sides(request, *one, voice.shaper);
    if (!page) page = in_columns(request, *one, voice.shaper, 2);
  }
  if (!page) {
    request.layouts.clear();
    request.divisions = {{"flowing",
                          {},
                          {[&] { return maker.pieces(DayDetail::close); }},
                          tight_rhythm,
                          tight_leading}};
    page = compose(request, voice.shaper, sink);
  }
  if (!page) return std::nullopt;
  return finished(*std::move(page), whole, title, Phrase::day_subject);
}
}  // namespace furnish
