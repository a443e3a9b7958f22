#include "figure/calendar_strip.h"

#include <algorithm>
#include <optional>

#include "figure/set_text.h"
#include "figure/shading.h"
#include "page/list.h"

namespace furnish {
namespace {
using std::chrono::days;
using std::chrono::weekday;
using std::chrono::year_month_day;
using Line = std::shared_ptr<const ShapedLine>;

constexpr Length between_columns = 7_mm, widest_cell = 13_mm, month_gap = 2_mm, mark_gap = 0.7_mm,
                 outline = 0.3_mm, month_rule = 0.2_mm, legend_gap = 5_mm, legend_air = 2_mm;
constexpr double row_pitch = 1.32;  // of the number's size
constexpr double head_pitch = 1.3, legend_pitch = 1.4;

Contour triangle(Point centre, Length size) {
  const Length half = size / 2;
  const Point top{centre.x, centre.y - half}, right{centre.x + half, centre.y + half},
      left{centre.x - half, centre.y + half};
  return {top, {{top, right, right}, {right, left, left}}, true};
}

enum class Sign : std::uint8_t { today, daily, brush, nails, tidy, visit };

/// Sizes that look alike: a dot of the same width looks larger than what has corners.
void put_sign(Sign sign, Point centre, Length size, Frame& frame) {
  if (sign == Sign::daily || sign == Sign::brush) {
    shade_mark(sign == Sign::daily ? Shade::dark : Shade::middle, centre, scaled(size, 0.95),
               frame);
    return;
  }
  Contour contour = sign == Sign::nails ? triangle(centre, scaled(size, 1.05))
                                        : diamond(centre, scaled(size, 1.25));
  frame.marks.emplace_back(
      PathMark{{std::move(contour)}, Ink::text, std::nullopt, {}, Dash::solid});
}

void put(const Line& line, Point baseline, Role role, Ink ink, Frame& frame) {
  frame.marks.emplace_back(TextMark{baseline, line, ink, std::string(name(role))});
}

/// A box round a number: today's outline or the visit's square.
void put_box(const Rect& box, Sign sign, Frame& frame) {
  if (sign == Sign::visit) {
    frame.marks.emplace_back(FillMark{box, Ink::text});
    return;
  }
  const Length half = outline / 2;
  frame.marks.emplace_back(PathMark{{rectangle_contour(inset(box, {half, half, half, half}))},
                                    std::nullopt,
                                    Ink::text,
                                    outline,
                                    Dash::solid});
}

class Strip final : public Block {
 public:
  Strip(StripInput input, Origin origin) : Block(std::move(origin)), input_(std::move(input)) {
    const Date first = week_of(input_.today), last = week_of(input_.visit);
    for (Date week = first; week <= last; week += days(7)) weeks_.push_back(week);
    if (weeks_.size() > most_strip_weeks) {
      weeks_.resize(most_strip_weeks);
      weeks_.back() = last;
      left_out_ = true;
    }
  }

  Extent measure(Length width, const Setting& setting) const override {
    const Plan plan = planned(width, setting);
    Extent extent{plan.height, plan.height};
    extent.too_wide = std::max(Length{}, plan.least_cell - plan.cell) * 7;
    extent.baseline = head_baseline(*plan.heads.front());
    extent.last_baseline = plan.height;
    return extent;
  }

  void place(const Rect& box, const Setting& setting, Frame& frame) const override {
    const TagScope tag(frame, Structure::figure, input_.alt);
    const Plan plan = planned(box.size.width, setting);
    for (std::size_t column = 0; column < plan.columns; ++column) {
      const Point corner{
          box.left() + (plan.column_width + between_columns) * static_cast<std::int64_t>(column),
          box.top()};
      draw_heads(plan, corner, frame);
      for (std::size_t row = 0; row < plan.rows; ++row) {
        const std::size_t week = column * plan.rows + row;
        if (week < weeks_.size()) draw_week(plan, week, row, corner, setting, frame);
      }
    }
    draw_legend(plan, box, frame);
  }

 private:
  struct LegendEntry {
    Sign sign;
    Line word;
    Length x, y;  ///< of its left end and middle, from the legend's corner
  };
  struct Plan {
    std::size_t columns = 1, rows = 1;
    Length month, cell, least_cell, column_width;
    Length number, capital;  ///< width of two figures, height of theirs
    Length head, pitch, mark;
    std::vector<Line> heads;
    std::vector<LegendEntry> legend;
    Point legend_corner;  ///< from the box's
    Length height;
    Length day_left(unsigned of_week) const {
      return month + cell * static_cast<std::int64_t>(of_week);
    }
    Length week_top(std::size_t row) const { return head + pitch * static_cast<std::int64_t>(row); }
  };

  Date week_of(Date day) const { return day - (weekday(day) - input_.first_weekday); }
  bool printed(Date day) const { return day >= input_.today && day <= input_.visit; }
  static unsigned month_of(Date day) { return static_cast<unsigned>(year_month_day(day).month()); }

  Plan planned(Length width, const Setting& setting) const {
    Plan plan;
    const Length size = setting.type[Role::body].length();
    const Line figures = set_line("28", Face::regular, Role::body, setting);
    plan.number = figures->width();
    plan.capital = capitals(*figures);
    plan.pitch = scaled(size, row_pitch);
    plan.head = scaled(setting.type[Role::label].length(), head_pitch);
    plan.mark = scaled(plan.capital, 0.6);
    plan.least_cell = plan.number + mark_gap * 2 + plan.mark;
    for (const std::string& each : input_.words.months) {
      plan.month = std::max(
          plan.month, set_line(each, Face::semibold, Role::label, setting)->width() + month_gap);
    }
    const std::size_t wanted = weeks_.size() <= input_.most_rows ? 1 : weeks_.size() <= 12 ? 2 : 3;
    for (plan.columns = wanted;; --plan.columns) {
      const auto count = static_cast<std::int64_t>(plan.columns);
      const Length room = (width - between_columns * (count - 1)) / count - plan.month;
      plan.cell = std::min(room / 7, widest_cell);
      if (plan.cell >= plan.least_cell || plan.columns == 1) break;
    }
    plan.rows = (weeks_.size() + plan.columns - 1) / plan.columns;
    plan.column_width = plan.month + plan.cell * 7;
    plan.heads = heads(plan, setting);
    plan.height = plan.week_top(plan.rows);
    lay_legend(plan, width, setting);
    return plan;
  }

  /// The weekdays in the strip's order, as long as all have room.
  std::vector<Line> heads(const Plan& plan, const Setting& setting) const {
    for (const auto* names : {&input_.words.weekdays, &input_.words.narrow_weekdays}) {
      std::vector<Line> out;
      Length widest;
      for (unsigned i = 0; i < 7; ++i) {
        const unsigned day = (input_.first_weekday + days(i)).c_encoding();
        out.push_back(set_line((*names)[day], Face::regular, Role::label, setting));
        widest = std::max(widest, out.back()->width());
      }
      if (widest + mark_gap <= plan.cell || names == &input_.words.narrow_weekdays) return out;
    }
    return {};
  }

  void lay_legend(Plan& plan, Length width, const Setting& setting) const {
    const auto shown = [&](bool StripDay::*mark) {
      return std::ranges::any_of(
          input_.days, [&](const StripDay& day) { return day.*mark && printed(day.day); });
    };
    const StripWords& words = input_.words;
    const auto add = [&](Sign sign, const std::string& word, bool there) {
      if (word.empty() || !there) return;
      plan.legend.push_back({sign, set_line(word, Face::regular, Role::label, setting), {}, {}});
    };
    add(Sign::daily, words.daily, shown(&StripDay::daily));
    add(Sign::brush, words.brush, shown(&StripDay::brush));
    add(Sign::nails, words.nails, shown(&StripDay::nails));
    add(Sign::tidy, words.tidy, shown(&StripDay::tidy));
    add(Sign::visit, words.visit, true);
    add(Sign::today, words.today, input_.today != input_.visit);
    if (plan.legend.empty()) return;

    const Length sign = scaled(plan.mark, 1.2) + mark_gap * 2,
                 pitch = scaled(setting.type[Role::label].length(), legend_pitch);
    Length widest;
    for (const LegendEntry& entry : plan.legend) {
      widest = std::max(widest, sign + entry.word->width());
    }
    Length x, y = pitch / 2;
    const bool beside = plan.columns == 1 && width - plan.column_width - between_columns >= widest;
    for (LegendEntry& entry : plan.legend) {
      const Length own = sign + entry.word->width();
      if (x > Length{} && (beside || x + own > width)) {
        x = {};
        y += pitch;
      }
      entry.x = x;
      entry.y = y;
      x += own + legend_gap;
    }
    const Length high = y + pitch / 2;
    plan.legend_corner = beside ? Point{plan.column_width + between_columns, plan.head}
                                : Point{{}, plan.height + legend_air};
    plan.height = std::max(plan.height, plan.legend_corner.y + high);
  }

  /// Letters such as d are a little higher than capitals.
  static Length head_baseline(const ShapedLine& head) { return scaled(capitals(head), 1.1); }

  static void draw_heads(const Plan& plan, Point corner, Frame& frame) {
    for (unsigned i = 0; i < 7; ++i) {
      const Line& head = plan.heads[i];
      // Over the numbers, which end where two figures do.
      const Length middle = corner.x + plan.day_left(i) + mark_gap + plan.number / 2;
      const Length left = std::max(middle - head->width() / 2, corner.x + plan.day_left(i));
      put(head, {left, corner.y + head_baseline(*head)}, Role::label, Ink::quiet, frame);
    }
  }

  void draw_week(const Plan& plan, std::size_t week, std::size_t row, Point corner,
                 const Setting& setting, Frame& frame) const {
    const Length top = corner.y + plan.week_top(row), middle = top + plan.pitch / 2;
    name_month(plan, week, row, {corner.x, middle}, setting, frame);
    for (unsigned i = 0; i < 7; ++i) {
      const Date day = weeks_[week] + days(i);
      if (!printed(day)) continue;
      const Length left = corner.x + plan.day_left(i);
      draw_month_rule(plan, day, i, row, {left, top}, frame);
      draw_day(plan, day, {left, middle}, setting, frame);
    }
    if (left_out_ && week + 1 == weeks_.size()) {
      frame.marks.emplace_back(StrokeMark{
          {corner.x, top}, {corner.x + plan.column_width, top}, outline, Ink::text, Dash::dotted});
    }
  }

  /// At the row of its first day, and at the first row of each column.
  void name_month(const Plan& plan, std::size_t week, std::size_t row, Point at,
                  const Setting& setting, Frame& frame) const {
    // That of the row's first day: a name beside the days of another month would be read as theirs.
    const auto first_month = [&](std::size_t of) -> std::optional<unsigned> {
      for (unsigned i = 0; i < 7; ++i) {
        if (printed(weeks_[of] + days(i))) return month_of(weeks_[of] + days(i));
      }
      return std::nullopt;
    };
    const bool jumped = left_out_ && week + 1 == weeks_.size();
    std::optional<unsigned> month = first_month(week);
    const bool begins = row == 0 || week == 0 || jumped;
    if (!begins && first_month(week - 1) == month) month.reset();
    if (!month) return;
    const Line words =
        set_line(input_.words.months[*month - 1], Face::semibold, Role::label, setting);
    put(words, {at.x, at.y + plan.capital / 2}, Role::label, Ink::text, frame);
  }

  /// Above and at the left of a day that has another month there.
  void draw_month_rule(const Plan& plan, Date day, unsigned of_week, std::size_t row, Point corner,
                       Frame& frame) const {
    const auto other = [&](Date neighbour) {
      return printed(neighbour) && month_of(neighbour) != month_of(day);
    };
    const Point right{corner.x + plan.cell, corner.y}, below{corner.x, corner.y + plan.pitch};
    if (row > 0 && other(day - days(7))) {
      frame.marks.emplace_back(StrokeMark{corner, right, month_rule, Ink::quiet});
    }
    if (of_week > 0 && other(day - days(1))) {
      frame.marks.emplace_back(StrokeMark{corner, below, month_rule, Ink::quiet});
    }
  }

  /// `at`: the left end of its cell, half its height.
  void draw_day(const Plan& plan, Date day, Point at, const Setting& setting, Frame& frame) const {
    const bool visit = day == input_.visit, today = day == input_.today;
    const Line number = set_line(std::to_string(static_cast<unsigned>(year_month_day(day).day())),
                                 visit || today ? Face::bold : Face::regular, Role::body, setting);
    const Length left = at.x + mark_gap, right = left + plan.number;
    if (visit || today) {
      const Length air = mark_gap - 0.1_mm, half = plan.pitch / 2 - 0.25_mm;
      put_box({{left - air, at.y - half}, {plan.number + air * 2, half * 2}},
              visit ? Sign::visit : Sign::today, frame);
    }
    put(number, {right - number->width(), at.y + plan.capital / 2}, Role::body,
        visit ? Ink::paper : Ink::text, frame);
    const auto found = std::ranges::find(input_.days, day, &StripDay::day);
    if (visit || found == input_.days.end()) return;
    std::vector<Sign> signs;
    if (found->daily) signs.push_back(Sign::daily);
    if (found->brush) signs.push_back(Sign::brush);
    if (found->nails) signs.push_back(Sign::nails);
    if (found->tidy) signs.push_back(Sign::tidy);
    const auto count = static_cast<std::int64_t>(signs.size());
    if (count == 0) return;
    // Side by side where the cell has room, else under each other and smaller.
    const Length wide = plan.mark, next = wide + mark_gap / 2;
    const bool beside = right + mark_gap + next * count <= at.x + plan.cell;
    const Length high = (plan.pitch - 0.4_mm) / (beside ? 1 : count),
                 size = std::min(plan.mark, scaled(high, 0.7));
    Point centre{right + mark_gap + wide / 2, beside ? at.y : at.y - high * (count - 1) / 2};
    for (const Sign sign : signs) {
      put_sign(sign, centre, size, frame);
      (beside ? centre.x : centre.y) += beside ? next : high;
    }
  }

  static void draw_legend(const Plan& plan, const Rect& box, Frame& frame) {
    for (const LegendEntry& entry : plan.legend) {
      const Point at{box.left() + plan.legend_corner.x + entry.x,
                     box.top() + plan.legend_corner.y + entry.y};
      const Length wide = scaled(plan.mark, 1.2);
      if (entry.sign == Sign::visit || entry.sign == Sign::today) {
        put_box({{at.x, at.y - wide / 2}, {wide, wide}}, entry.sign, frame);
      } else {
        put_sign(entry.sign, {at.x + wide / 2, at.y}, plan.mark, frame);
      }
      put(entry.word, {at.x + wide + mark_gap * 2, at.y + capitals(*entry.word) / 2}, Role::label,
          Ink::text, frame);
    }
  }

  StripInput input_;
  std::vector<Date> weeks_;  ///< the first day of each row
  bool left_out_ = false;    ///< weeks before the last row
};
}  // namespace

BlockPtr calendar_strip(StripInput input, Origin origin) {
  return std::make_shared<Strip>(std::move(input), std::move(origin));
}
}  // namespace furnish
