#include "figure/calendar_strip.h"

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include <algorithm>
#include <map>
#include <set>
#include <sstream>

#include "figure/setting.h"
#include "output/tool.h"

namespace furnish {
namespace {
using namespace std::chrono;

StripInput strip_of(Date today, int length, weekday first = Monday) {
  StripInput input{today, today + days(length), first, {}, {}, "calendar"};
  input.words = {
      {"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"},
      {"S", "M", "T", "W", "T", "F", "S"},
      {"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"},
      "today",
      "every day",
      "brush",
      "nails",
      "tidy",
      "visit"};
  return input;
}

struct Drawn {
  Frame frame;
  std::vector<const TextMark*> numbers, heads, months, legend;
  Length height;
};

Drawn drawn(const StripInput& input, const HandHeld& page, Length width = 186_mm) {
  Drawn out;
  const BlockPtr strip = calendar_strip(input);
  const Extent extent = strip->measure(width, page.setting());
  CHECK(extent.too_wide == Length{});
  out.height = extent.wanted;
  out.frame.size = {width, extent.wanted};
  strip->place({{}, out.frame.size}, page.setting(), out.frame);
  for (const Mark& mark : out.frame.marks) {
    const auto* text = std::get_if<TextMark>(&mark);
    if (text == nullptr) continue;
    const std::string& says = text->line->text();
    if (text->role == "body") {
      out.numbers.push_back(text);
    } else if (text->ink == Ink::quiet) {
      out.heads.push_back(text);
    } else {
      const bool month = std::ranges::find(input.words.months, says) != input.words.months.end();
      (month ? out.months : out.legend).push_back(text);
    }
  }
  return out;
}

Rect ink_of(const TextMark& mark) {
  Rect ink = mark.line->ink();
  ink.origin = {ink.origin.x + mark.baseline.x, ink.origin.y + mark.baseline.y};
  return ink;
}
Length middle_of(const TextMark& mark) {
  return mark.baseline.x + mark.line->width() / 2;
}

/// Which column of ncal's month each day is in, 0 to 6, by the place of its number in the line.
std::map<unsigned, std::size_t> columns_of_ncal(unsigned month, int year, bool sunday_first) {
  const auto said = test::run(
      fmt::format("LC_ALL=C ncal -b -h {} {} {}", sunday_first ? "-S" : "-M", month, year));
  REQUIRE(said.status == 0);
  std::istringstream lines(said.out);
  std::string line;
  std::getline(lines, line);  // the month
  std::getline(lines, line);  // the weekdays
  std::map<unsigned, std::size_t> columns;
  while (std::getline(lines, line)) {
    for (std::size_t column = 0; column < 7 && column * 3 < line.size(); ++column) {
      const std::string number = line.substr(column * 3, 2);
      if (number.find_first_not_of(' ') == std::string::npos) continue;
      columns[static_cast<unsigned>(std::stoul(number))] = column;
    }
  }
  return columns;
}
}  // namespace

TEST_CASE("days stand under the weekdays that ncal gives them", "[figure][calendar]") {
  const HandHeld page;
  std::map<std::tuple<int, unsigned, bool>, std::map<unsigned, std::size_t>> known;
  for (const Date today : {sys_days(year(2026) / 11 / 24), sys_days(year(2028) / 2 / 1),
                           sys_days(year(2027) / 2 / 26), sys_days(year(2030) / 12 / 31),
                           sys_days(year(2000) / 2 / 28), sys_days(year(2100) / 2 / 27)}) {
    for (const weekday first : {Monday, Sunday}) {
      for (const int length : {5, 33, 56, 110}) {
        INFO(to_iso(today) << " and " << length << " days");
        const Drawn strip = drawn(strip_of(today, length, first), page);
        REQUIRE(strip.numbers.size() == static_cast<std::size_t>(length) + 1);
        REQUIRE(strip.heads.size() % 7 == 0);
        for (std::size_t i = 0; i < strip.numbers.size(); ++i) {
          const year_month_day date(today + days(i));
          const auto month = static_cast<unsigned>(date.month()),
                     day = static_cast<unsigned>(date.day());
          CHECK(strip.numbers[i]->line->text() == std::to_string(day));
          const auto [place, is_new] =
              known.try_emplace({static_cast<int>(date.year()), month, first == Sunday});
          if (is_new) {
            place->second = columns_of_ncal(month, static_cast<int>(date.year()), first == Sunday);
          }
          // The head that is nearest is that of its column.
          const auto nearest = std::ranges::min_element(strip.heads, {}, [&](const TextMark* head) {
            return std::abs((middle_of(*head) - middle_of(*strip.numbers[i])).um());
          });
          CHECK(static_cast<std::size_t>(nearest - strip.heads.begin()) % 7 ==
                place->second.at(day));
        }
      }
    }
  }
}

TEST_CASE("eight weeks stay within 190 by 45 mm, and nothing overlaps", "[figure][calendar]") {
  const HandHeld page;
  for (int length = 0; length <= 200; length += 3) {
    for (const Length width : {186_mm, 150_mm, 100_mm}) {
      INFO(length << " days on " << width.in_mm());
      StripInput input = strip_of(sys_days(year(2026) / 11 / 24), length);
      for (int i = 1; i < length; ++i) {
        input.days.push_back({input.today + days(i), true, i % 2 == 0, i % 28 == 0, i % 20 == 0});
      }
      const Drawn strip = drawn(input, page, width);
      if (length <= 56 && width == 186_mm) CHECK(strip.height <= 45_mm);
      std::vector<Rect> taken;
      // A letter's ink may reach a hair over its own edge.
      const Rect whole = outset({{}, strip.frame.size}, {20_um, 20_um, 20_um, 20_um});
      for (const Mark& mark : strip.frame.marks) {
        Rect area;
        if (const auto* text = std::get_if<TextMark>(&mark)) {
          area = ink_of(*text);
        } else if (const auto* path = std::get_if<PathMark>(&mark); path && path->fill == Ink::text) {
          Point low = path->contours.front().start, high = low;
          for (const auto& curve : path->contours.front().curves) {
            low = {std::min(low.x, curve.end.x), std::min(low.y, curve.end.y)};
            high = {std::max(high.x, curve.end.x), std::max(high.y, curve.end.y)};
          }
          area = {low, {high.x - low.x, high.y - low.y}};
        } else {
          continue;
        }
        CHECK(contains(whole, area));
        CHECK(std::ranges::none_of(taken, [&](const Rect& other) { return overlap(area, other); }));
        taken.push_back(area);
      }
    }
  }
}

TEST_CASE("kinds of day are told apart by shape, and the legend has those that occur",
          "[figure][calendar]") {
  const HandHeld page;
  StripInput input = strip_of(sys_days(year(2026) / 11 / 24), 56);
  const auto shapes = [&](const StripDay& day) {
    input.days = {day};
    std::vector<std::size_t> curves;
    const Drawn strip = drawn(input, page);
    std::string legend;
    for (const TextMark* mark : strip.legend) legend += mark->line->text() + " ";
    for (const Mark& mark : strip.frame.marks) {
      const auto* path = std::get_if<PathMark>(&mark);
      if (path == nullptr || !path->fill) continue;
      if (path->fill == Ink::paper) continue;  // under a half disc
      CHECK(path->fill == Ink::text);
      // Of a triangle 2, of a diamond 3 straight lines before it is closed; of a dot 4 curves, of
      // the lower half of one 3.
      curves.push_back(path->contours.front().curves.size());
    }
    return std::pair(curves, legend);
  };
  using Shapes = std::vector<std::size_t>;
  const Date day = input.today + days(10);
  CHECK(shapes({day, true, false, false, false}) ==
        std::pair(Shapes{4, 4}, std::string("every day visit today ")));
  CHECK(shapes({day, false, true, false, false}) ==
        std::pair(Shapes{3, 3}, std::string("brush visit today ")));
  CHECK(shapes({day, false, false, true, false}) ==
        std::pair(Shapes{2, 2}, std::string("nails visit today ")));
  CHECK(shapes({day, false, false, false, true}) ==
        std::pair(Shapes{3, 3}, std::string("tidy visit today ")));
  CHECK(shapes({day, true, true, true, true}) ==
        std::pair(Shapes{4, 3, 2, 3, 4, 3, 2, 3},
                  std::string("every day brush nails tidy visit today ")));
  // Days outside are passed over; on the visit's the salon does it all.
  CHECK(shapes({input.visit + days(1), true, true, true, true}).first.empty());
  CHECK(shapes({input.today - days(1), true, true, true, true}).first.empty());

  input.days = {};
  const Drawn strip = drawn(input, page);
  const auto white = std::ranges::count(strip.numbers, Ink::paper, &TextMark::ink);
  CHECK(white == 1);
  CHECK(strip.numbers.back()->ink == Ink::paper);
  const Rect number = ink_of(*strip.numbers.back());
  CHECK(std::ranges::any_of(strip.frame.marks, [&](const Mark& mark) {
    const auto* fill = std::get_if<FillMark>(&mark);
    return fill != nullptr && fill->ink == Ink::text && contains(fill->area, number);
  }));
  CHECK(std::get<OpenTag>(strip.frame.marks.front()).alt == "calendar");
}

TEST_CASE("a month is named beside its first whole row and at the top of a column",
          "[figure][calendar]") {
  const HandHeld page;
  const auto names = [&](const StripInput& input) {
    std::string out;
    const Drawn strip = drawn(input, page);
    for (const TextMark* mark : strip.months) out += mark->line->text() + " ";
    return out;
  };
  CHECK(names(strip_of(sys_days(year(2026) / 11 / 24), 56)) == "Nov Dec Dec Jan ");
  // The second column begins within December.
  CHECK(names(strip_of(sys_days(year(2026) / 11 / 10), 56)) == "Nov Dec Dec Jan ");
  CHECK(names(strip_of(sys_days(year(2026) / 12 / 1), 20)) == "Dec ");
  CHECK(names(strip_of(sys_days(year(2026) / 12 / 14), 0)) == "Dec ");
}

TEST_CASE("a year's interval leaves weeks out and says so", "[figure][calendar]") {
  const HandHeld page;
  StripInput input = strip_of(sys_days(year(2026) / 11 / 24), 364);
  const Drawn strip = drawn(input, page);
  CHECK(strip.numbers.size() < 7 * most_strip_weeks);
  CHECK(strip.numbers.back()->line->text() == "23");
  CHECK(strip.numbers.back()->ink == Ink::paper);
  CHECK(strip.months.back()->line->text() == "Nov");
  CHECK(std::ranges::any_of(strip.frame.marks, [](const Mark& mark) {
    const auto* stroke = std::get_if<StrokeMark>(&mark);
    return stroke != nullptr && stroke->dash == Dash::dotted;
  }));
  CHECK(drawn(strip_of(input.today, 180), page).numbers.size() == 181);
}
}  // namespace furnish
