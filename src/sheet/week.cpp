#include "sheet/week.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>
#include <vector>

#include "base/text.h"
#include "page/stack.h"
#include "page/table.h"
#include "sheet/alerts.h"
#include "sheet/day_lists.h"
#include "sheet/day_row.h"
#include "sheet/last_time.h"
#include "sheet/parts.h"
#include "sheet/pieces.h"
#include "sheet/terms.h"

namespace furnish {
namespace {
constexpr Length open_rhythm = 4_mm, close_rhythm = Length::mm(2.2), tight_rhythm = Length::mm(1.4);
constexpr double close_leading = 0.95, tight_leading = 0.88;
/// Of the width: a groomer and the minutes, the pets.
constexpr int groomer_share = 24, pets_share = 76;

class WeekMaker {
 public:
  WeekMaker(const Salon& salon, std::span<const WeekDay> days, const Paper& paper,
            const SheetVoice& voice)
      : salon_(salon), days_(days), paper_(paper), voice_(voice) {}

  BlockPtr whole() const {
    std::vector<BlockPtr> out{head(), table()};
    for (const WeekDay& one : days_) {
      out.push_back(gap(0.8));
      out.push_back(day(one));
    }
    return column(std::move(out));
  }
  /// A groomer's day a piece.
  std::vector<BlockPtr> pieces() const {
    std::vector<BlockPtr> out{column({head(), table()})};
    for (const WeekDay& one : days_) {
      std::vector<BlockPtr> rows = day_rows(one);
      for (std::size_t i = 0; i < rows.size(); ++i) {
        const BlockPtr row = list({rows[i]});
        out.push_back(i == 0 ? column({day_head(one), row}) : row);
      }
      if (rows.empty()) out.push_back(day_head(one));
    }
    return out;
  }

  std::string title() const {
    // The day is not torn where the line ends.
    return say(Phrase::week_title, {without_breaks(voice_.locale.long_date(days_.front().date))});
  }
  FootText foot() const {
    const std::string legend = say(Phrase::week_legend);
    return {salon_.name.empty() ? legend : voice_.words.written(salon_.name) + "\u00A0· " + legend,
            {}};
  }

 private:
  std::string say(Phrase phrase, const std::vector<WordArgument>& arguments = {}) const {
    return voice_.words.say(phrase, arguments);
  }
  static int count(std::chrono::minutes time) { return static_cast<int>(time.count()); }

  BlockPtr head() const {
    TextStyle style{Role::title, Face::bold};
    style.structure = Structure::title;
    style.leading = 1.0;
    TextStyle beside{Role::subtitle};
    beside.align = Align::end;
    return column({std::make_shared<Ends>(paragraph(capitalised(title()), style),
                                          paragraph(sums(all()), beside), 4_mm),
                   std::make_shared<Rule>(rule_name)});
  }

  /// All bookings of the week, or those of a day, as if they were one groomer's.
  static void add(DayBlock& to, const WeekDay& day) {
    for (const DayBlock& block : day.plan.blocks) to.take(block);
  }
  DayBlock all() const {
    DayBlock out;
    for (const WeekDay& one : days_) add(out, one);
    return out;
  }

  std::string sums(const DayBlock& block) const {
    return day_sums(block, DayDetail::tools, voice_);
  }

  std::string groomer(const DayBlock& block) const {
    return block.groomer.empty() ? say(Phrase::day_no_groomer)
                                 : voice_.words.written(block.groomer);
  }

  static bool same(const DayBlock& one, const DayBlock& other) {
    return same_groomer(*one.rows.front().booking, *other.rows.front().booking) ||
           (one.groomer.empty() && other.groomer.empty());
  }

  /// Each groomer's blocks, a place a day, null where there is none; nobody's last.
  std::vector<std::vector<const DayBlock*>> by_groomer() const {
    std::vector<std::vector<const DayBlock*>> out;
    for (std::size_t day = 0; day < days_.size(); ++day) {
      for (const DayBlock& block : days_[day].plan.blocks) {
        const auto found = std::ranges::find_if(out, [&](const auto& blocks) {
          return std::ranges::any_of(
              blocks, [&](const DayBlock* one) { return one != nullptr && same(*one, block); });
        });
        auto& row = found == out.end() ? out.emplace_back(days_.size(), nullptr) : *found;
        row[day] = &block;
      }
    }
    std::ranges::stable_partition(out, [](const auto& blocks) {
      return std::ranges::any_of(
          blocks, [](const DayBlock* one) { return one != nullptr && !one->groomer.empty(); });
    });
    return out;
  }

  /// "320 of 360", a question mark where some of it is not known.
  TableCell minutes_cell(const DayBlock& block) const {
    if (block.rows.empty()) return {{{"–"}}};
    const bool known = std::ranges::all_of(
        block.rows, [](const DayRow& row) { return row.expected && row.booked; });
    const bool ends_known =
        std::ranges::all_of(block.rows, [](const DayRow& row) { return row.booked.has_value(); });
    // What is known alone is more, however long the others take.
    const bool over = ends_known && block.expected > block.booked;
    std::string text =
        ends_known ? say(Phrase::day_minutes_short, {count(block.expected), count(block.booked)})
                   : say(Phrase::day_minutes_open, {count(block.expected)});
    text = without_breaks(std::move(text));
    if (!known) text += "\u00A0?";
    return {{{std::move(text), over ? Face::bold : Face::regular}}};
  }

  /// "Tue" over "24", "Th 3" over "ngày 24": what heads a column leaves room for its numbers.
  static std::string in_two_lines(std::string day) {
    for (const std::string_view between : {", ", "، ", " "}) {
      if (const auto at = day.find(between); at != std::string::npos) {
        return day.replace(at, between.size(), "\n");
      }
    }
    return day;
  }

  /// Minutes of each groomer, a day a column, and in all.
  BlockPtr table() const {
    const auto groomers = by_groomer();
    if (groomers.empty()) return std::make_shared<Gap>(0, 0, 0);
    using Kind = TableColumn::Kind;
    std::vector<TableColumn> columns{{.head = "", .kind = Kind::flexible, .heads_rows = true}};
    for (const WeekDay& one : days_) {
      columns.push_back({in_two_lines(voice_.locale.weekday_and_day(one.date)),
                         Kind::natural,
                         {},
                         1,
                         Align::end});
    }
    columns.push_back({say(Phrase::week_all), Kind::natural, {}, 1, Align::end});
    std::vector<TableRow> rows;
    std::vector<DayBlock> sums(days_.size() + 1);
    for (const auto& blocks : groomers) {
      DayBlock total;
      TableRow row;
      for (std::size_t day = 0; day < blocks.size(); ++day) {
        const DayBlock* const block = blocks[day];
        if (row.cells.empty()) {
          const auto named =
              std::ranges::find_if(blocks, [](const DayBlock* one) { return one != nullptr; });
          row.cells.push_back({{{groomer(**named), Face::semibold}}});
        }
        row.cells.push_back(minutes_cell(block == nullptr ? DayBlock{} : *block));
        if (block == nullptr) continue;
        for (DayBlock* const to : {&total, &sums[day], &sums.back()}) to->take(*block);
      }
      row.cells.push_back(minutes_cell(total));
      rows.push_back(std::move(row));
    }
    if (groomers.size() > 1) {
      TableRow row;
      row.opens_group = true;
      row.cells.push_back({{{say(Phrase::week_all), Face::semibold}}});
      for (const DayBlock& sum : sums) row.cells.push_back(minutes_cell(sum));
      rows.push_back(std::move(row));
    }
    return std::make_shared<Table>(std::move(columns), std::move(rows), Role::body,
                                   Origin{"minutes", salon_.span});
  }

  BlockPtr day_head(const WeekDay& one) const {
    TextStyle style{Role::alert, Face::bold};
    style.structure = Structure::heading;
    style.leading = 1.1;
    TextStyle beside{Role::body};
    beside.align = Align::end;
    DayBlock sum;
    add(sum, one);
    std::string says;
    if (one.unread) {
      says = say(Phrase::week_unread);
      beside.face = Face::bold;
    } else if (sum.rows.empty() && one.plan.unread.empty()) {
      says = say(one.closed ? Phrase::week_closed : Phrase::week_nothing);
    } else {
      says = day_sums(sum, DayDetail::tools, voice_);
      if (one.closed) says = say(Phrase::day_closed) + " " + says;
    }
    std::vector<BlockPtr> out{
        std::make_shared<Ends>(
            paragraph(capitalised(voice_.locale.day_and_month(one.date, one.date)), style),
            paragraph(std::move(says), beside), 4_mm),
        std::make_shared<Rule>(rule_head)};
    if (const std::string unread = unread_text(one.plan, voice_); !unread.empty()) {
      out.push_back(paragraph({{unread, Face::bold}}));
    }
    if (std::string unread = salon_unread_text(one.plan.salon_unread, voice_.words);
        !unread.empty()) {
      out.push_back(paragraph({{std::move(unread), Face::bold}}));
    }
    return column(std::move(out));
  }

  static BlockPtr list(std::vector<BlockPtr> items) {
    return std::make_shared<Column>(std::move(items), Origin{}, Structure::list);
  }

  BlockPtr day(const WeekDay& one) const {
    std::vector<BlockPtr> out{day_head(one)}, rows = day_rows(one);
    if (!rows.empty()) out.push_back(list(std::move(rows)));
    return column(std::move(out));
  }

  /// A groomer and the minutes, and the pets beside.
  std::vector<BlockPtr> day_rows(const WeekDay& one) const {
    std::vector<BlockPtr> out;
    for (const DayBlock& block : one.plan.blocks) {
      TextStyle name{Role::action, Face::bold};
      name.structure = Structure::label;
      std::vector<TextSpan> minutes = minutes_cell(block).text;
      const BlockPtr who = column({paragraph(groomer(block), name), paragraph(std::move(minutes))});
      std::vector<BlockPtr> lines{
          std::make_shared<Gap>(0.3, 0.15, 0),
          std::make_shared<Beside>(
              std::vector<Beside::Cell>{{who, std::nullopt, groomer_share},
                                        {pets(one, block), std::nullopt, pets_share}},
              3_mm)};
      if (&block != &one.plan.blocks.back()) {
        lines.push_back(std::make_shared<Rule>(rule_row, Ink::quiet));
      }
      out.push_back(std::make_shared<Column>(
          std::move(lines), Origin{block.groomer, block.rows.front().booking->span},
          Structure::item));
    }
    return out;
  }

  /// About how many letters of the role stand on a line of the pets' share: they are about half as
  /// wide as high.
  double letters_a_line() const {
    constexpr Length letter = Length::micrometres(2450);
    return scaled(paper_.size.width, pets_share / 100.0 * 0.8) / letter;
  }

  static double letters(std::span<const TextSpan> booking) {
    double out = 0;
    for (const TextSpan& span : booking) {
      // Signal words are in capitals, which are wider.
      const auto capitals =
          std::ranges::count_if(span.text, [](char c) { return c >= 'A' && c <= 'Z'; });
      // So are ideographs, syllables of kana and Hangul: U+3000 and on.
      const auto wide = std::ranges::count_if(
          span.text, [](char c) { return static_cast<unsigned char>(c) >= 0xE3; });
      out += static_cast<double>(code_points(span.text)) + 0.6 * static_cast<double>(capitals) +
             static_cast<double>(wide);
    }
    return out;
  }

  /// "9:30 Marlow WARNING · 11:00 Otter". So that no danger reads as the next pet's, a line ends
  /// only between bookings, and no dot stands where it began anew; one that a line may not hold has
  /// lines of its own.
  BlockPtr pets(const WeekDay& day, const DayBlock& block) const {
    std::vector<TextSpan> text;
    double used = 0;
    for (const DayRow& row : block.rows) {
      std::vector<TextSpan> one = booking(day, row);
      const double own = letters(one);
      const bool fits = own <= letters_a_line();
      if (fits) {
        for (TextSpan& span : one) span.text = without_breaks(span.text);
      }
      const bool beside = fits && used + own <= letters_a_line();
      if (!text.empty()) text.push_back({beside ? "\u00A0· " : "\n"});
      used = (beside ? used : 0) + own + 2;
      std::ranges::move(one, std::back_inserter(text));
    }
    return paragraph(std::move(text), TextStyle{Role::action});
  }

  std::vector<TextSpan> booking(const WeekDay& day, const DayRow& row) const {
    const Booking& booked = *row.booking;
    const std::string name =
        row.pet == nullptr ? booked.pet.value : voice_.words.written(row.pet->pet.name.value);
    std::vector<TextSpan> out{{voice_.locale.time(booked.at) + "\u00A0"}, {name, Face::semibold}};
    const std::string hurts = row.pet == nullptr ? std::string() : hurt(day, row);
    if (!hurts.empty()) out.push_back({" " + hurts, Face::bold});
    if (row.pet == nullptr || row.pet->faulty) {
      out.push_back({comma(voice_.words) + say(Phrase::week_no_file), Face::bold});
    }
    // What can hurt ends before what the desk must see to begins.
    const auto next = [&] { return out.size() > 2 ? semicolon(voice_.words) : std::string(" "); };
    if (!row.clashes.empty()) {
      std::vector<std::string> others;
      for (const Booking* const other : row.clashes)
        others.push_back(voice_.locale.time(other->at));
      out.push_back(
          {next() + say(Phrase::day_clash) + "\u00A0" + voice_.locale.list(others), Face::bold});
    }
    if (row.over().count() > 0) {
      out.push_back({next() + say(Phrase::day_overrun) + "\u00A0+" +
                         say(Phrase::day_minutes_open, {count(row.over())}),
                     Face::bold});
    }
    return out;
  }

  /// The signal word of the gravest that the day's sheet will say, and the conditions on file.
  std::string hurt(const WeekDay& day, const DayRow& row) const {
    SheetInput input{kinds::day,   salon_,   row.pet->pet, row.pet->plan,
                     *row.booking, day.date, paper_};
    input.told = row.pet->visits;
    const SheetDesk desk{input, voice_};
    std::string out;
    for (const AlertEntry& entry : alert_entries(desk, CautionScope::card)) {
      const bool own = std::ranges::any_of(
          row.pet->pet.alerts, [&](const Alert& alert) { return alert.span == entry.origin.span; });
      if (entry.gravity > (own ? Gravity::panel : Gravity::row)) continue;
      out = entry.word;
      break;
    }
    const std::string conditions = condition_names(desk);
    if (!out.empty() && !conditions.empty()) out += comma(voice_.words);
    return out.empty() ? capitalised(conditions) : out + conditions;
  }

  const Salon& salon_;
  std::span<const WeekDay> days_;
  const Paper& paper_;
  const SheetVoice& voice_;
};
}  // namespace

std::optional<Sheet> make_week(const Salon& salon, std::span<const WeekDay> days,
                               const Paper& paper, const SheetVoice& voice, DiagnosticSink& sink) {
  const WeekMaker maker(salon, days, paper, voice);
  const Pet nobody;
  const Plan none;
  const SheetInput input{kinds::day, salon, nobody, none, std::nullopt, days.front().date, paper};
  const SheetDesk desk{input, voice};
  PageRequest request = page_request(input);
  request.span = salon.span;
  const FootText foot = maker.foot();
  go_on(request, desk, foot, foot, maker.title());
  request.foot_of = [foot](int side, int sides) {
    return sheet_foot(foot.left, fmt::format("{}/{}", side, sides));
  };
  request.layouts = {
      {"open", [&] { return maker.whole(); }, open_rhythm},
      {"close", [&] { return maker.whole(); }, close_rhythm, close_leading},
      {"tight", [&] { return maker.whole(); }, tight_rhythm, tight_leading},
  };
  request.divisions = {
      {"flowing", {}, {[&] { return maker.pieces(); }}, close_rhythm, close_leading}};
  auto page = compose(request, voice.shaper, sink);
  if (!page) return std::nullopt;
  return finished(*std::move(page), desk, maker.title(), Phrase::week_subject);
}
}  // namespace furnish
