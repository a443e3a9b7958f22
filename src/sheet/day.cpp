#include "sheet/day.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "sheet/day_maker.h"

namespace furnish {
namespace {
constexpr Length open_rhythm = 4_mm, close_rhythm = Length::mm(2.5), column_gutter = 5_mm;
constexpr double close_leading = 0.95;
/// In columns; fifty bookings that all are too much for two sides take four.
constexpr std::size_t most_sides = 5;

/// How close the lines of columns stand: as they should, or where a day has no other room.
struct Tightness {
  Length rhythm;
  double leading;
};
constexpr Tightness tight{Length::mm(1.6), 0.9}, tightest{Length::mm(1.0), 0.84};

Setting smallest(const PageRequest& request, TextShaper& shaper, const Tightness& how) {
  return {TypeScale(request.roles, shaper.fonts().capital_height(), 0, request.steps), how.rhythm,
          shaper, Precision::exact, how.leading};
}

Length width_of(const PageRequest& request) {
  return request.size.width - request.margins.left - request.margins.right;
}

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
    const auto page = fit(request, shaper, unheard);
    if (page && page->sides.size() == 2) return set(request, *page, shaper);
  }
  return std::nullopt;
}

/// Whether of two columns neither is so much higher that half a page would stay empty.
bool even_enough(std::span<const ColumnItem> items, std::size_t right_begins) {
  constexpr double uneven = 1.6;
  Length left, right;
  for (std::size_t i = 0; i < items.size(); ++i) {
    (i < right_begins ? left : right) += items[i].height;
  }
  return std::max(left, right) <= scaled(std::min(left, right), uneven);
}

/// On one side in two columns over the lists: parted between two groomers if that can be, else
/// about as high as each other. Empty if it takes more.
std::optional<ComposedPage> columns_over_lists(PageRequest request, const DayMaker& maker,
                                               TextShaper& shaper) {
  const std::vector<ColumnItem> items =
      maker.items((width_of(request) - column_gutter) / 2, smallest(request, shaper, tight),
                  DayMaker::Lists::none);
  request.divisions.clear();
  for (const ColumnCuts cuts : {ColumnCuts::at_openings, ColumnCuts::anywhere}) {
    const std::size_t right = column_starts(items, 2, cuts)[1];
    if (cuts == ColumnCuts::at_openings && !even_enough(items, right)) continue;
    request.layouts = {{"columns over lists",
                        [&] {
                          return column({maker.heading_block(),
                                         maker.two_columns(0, right, maker.bookings()),
                                         maker.lists_block()});
                        },
                        tight.rhythm, tight.leading}};
    DiagnosticSink unheard;  // other columns are tried
    if (auto page = compose(request, shaper, unheard)) return page;
  }
  return std::nullopt;
}

/// In two columns a side. Empty if it takes more sides.
std::optional<ComposedPage> in_columns(PageRequest request, const DayMaker& maker,
                                       TextShaper& shaper, std::size_t sides,
                                       const Tightness& how) {
  const Setting setting = smallest(request, shaper, how);
  const Length width = width_of(request);
  const std::vector<ColumnItem> items =
      maker.items((width - column_gutter) / 2, setting, DayMaker::Lists::entries);
  // Only the front has the head.
  const Length head = maker.heading_block()->measure(width, setting).wanted;
  std::vector<Length> over(2 * sides);
  over[0] = over[1] = head;
  request.layouts.clear();
  request.divisions.clear();
  for (const ColumnCuts cuts : {ColumnCuts::at_openings, ColumnCuts::anywhere}) {
    const auto starts = column_starts(items, 2 * sides, cuts, over);
    const auto front = [&, end = sides > 1 ? starts[2] : items.size()] {
      return column({maker.heading_block(), maker.two_columns(0, starts[1], end)});
    };
    if (sides == 1) {
      request.layouts = {{"columns", front, how.rhythm, how.leading}};
    } else {
      request.divisions = {
          {"columns",
           [&] { return std::vector<BlockPtr>{front()}; },
           {[&] {
             std::vector<BlockPtr> out;
             for (std::size_t side = 1; side < sides; ++side) {
               const std::size_t first = 2 * side, end = first + 2;
               out.push_back(maker.two_columns(starts[first], starts[first + 1],
                                               end < starts.size() ? starts[end] : items.size()));
             }
             return out;
           }},
           how.rhythm,
           how.leading}};
    }
    DiagnosticSink unheard;  // other columns are tried
    const auto page = fit(request, shaper, unheard);
    if (page && page->sides.size() == sides) return set(request, *page, shaper);
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
  if (!page) page = columns_over_lists(request, maker, shaper);
  return page ? std::move(page) : in_columns(std::move(request), maker, shaper, 1, tight);
}

/// Whether no hour of the day stands for two, so that it is told without "AM".
bool one_half_of_the_clock(const Day& day) {
  using std::chrono::hours;
  constexpr TimeOfDay opens = hours(7), closes = hours(19);
  return std::ranges::all_of(day.bookings, [&](const Booking& one) {
    const TimeOfDay last = one.collect.value_or(one.at);
    return one.at >= opens && last >= opens && one.at < closes && last < closes;
  });
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
  DayDesk short_desk = desk, brief_desk = desk;
  short_desk.alerts = brief_desk.alerts = DayAlerts::first;
  brief_desk.brief = true;
  brief_desk.bare_hours = one_half_of_the_clock(day);
  // Colours are left out before what to do about a danger is.
  DayDesk lean_desk = brief_desk, terse_desk = brief_desk;
  lean_desk.alerts = DayAlerts::whole;
  terse_desk.terse = true;
  const DayMaker maker(plan, desk), lean_maker(plan, lean_desk), short_maker(plan, short_desk),
      brief_maker(plan, brief_desk), terse_maker(plan, terse_desk);
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
  std::optional<ComposedPage> page = on_one_side(request, maker, voice.shaper);
  if (!page) page = in_columns(request, lean_maker, voice.shaper, 1, tight);
  if (!page) page = on_one_side(request, short_maker, voice.shaper);
  const auto over_two = [&](const DayMaker& one) {
    if (!page) page = on_two_sides(request, one, voice.shaper);
    if (!page) page = in_columns(request, one, voice.shaper, 2, tight);
  };
  over_two(maker);
  for (const Tightness& how : {tight, tightest}) {
    if (!page) page = in_columns(request, lean_maker, voice.shaper, 2, how);
  }
  over_two(short_maker);
  for (const DayMaker* const one : {&brief_maker, &terse_maker}) {
    for (const Tightness& how : {tight, tightest}) {
      if (!page) page = in_columns(request, *one, voice.shaper, 2, how);
    }
  }
  for (std::size_t sides = 3; !page && sides <= most_sides; ++sides) {
    page = in_columns(request, brief_maker, voice.shaper, sides, tight);
  }
  if (!page) {
    request.layouts.clear();
    request.divisions = {{"flowing",
                          {},
                          {[&] { return maker.pieces(DayDetail::close); }},
                          tight.rhythm,
                          tight.leading}};
    page = compose(request, voice.shaper, sink);
  }
  if (!page) return std::nullopt;
  return finished(*std::move(page), whole, title, Phrase::day_subject);
}
}  // namespace furnish
