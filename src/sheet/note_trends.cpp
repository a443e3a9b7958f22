#include "sheet/note_trends.h"

#include <algorithm>
#include <array>

#include "figure/chart.h"
#include "page/stack.h"
#include "sheet/note_words.h"
#include "sheet/parts.h"
#include "sheet/shown.h"
#include "sheet/trim_lines.h"

namespace furnish {
namespace {
constexpr Length between = 8_mm;
/// A line through fewer values shows no more than they do.
constexpr std::size_t fewest_weights = 2, fewest_lengths = 3;

class TrendMaker {
 public:
  TrendMaker(const NoteDesk& desk, bool dense)
      : desk_(desk),
        words_(desk.voice.words),
        locale_(desk.voice.locale),
        high_(dense ? 18_mm : 26_mm) {}

  BlockPtr make() const {
    std::vector<BlockPtr> charts;
    if (auto chart = weights()) charts.push_back(std::move(chart));
    if (auto chart = coat()) charts.push_back(std::move(chart));
    const std::vector<ChartPoint> apart = weeks_between();
    // Where the coat's chart is, its days say the same.
    if (charts.size() < 2 && varies(apart)) charts.push_back(intervals(apart));
    BlockPtr said = sentences(apart);
    if (charts.empty()) return said;
    if (charts.size() == 1 && said) charts.push_back(std::exchange(said, nullptr));
    std::vector<Beside::Cell> cells;
    for (BlockPtr& one : charts) cells.push_back({std::move(one)});
    // A chart alone has the place of one of two.
    if (cells.size() == 1) cells.push_back({std::make_shared<Gap>(0, 0, 0)});
    BlockPtr row = std::make_shared<Beside>(std::move(cells), between, Beside::Line::top);
    if (!said) return row;
    return column({std::move(row), std::make_shared<Gap>(0.4, 0.2, 1), std::move(said)});
  }

 private:
  BlockPtr titled(const std::string& title, BlockPtr chart) const {
    return column({heading(title, Role::label, Face::semibold), std::make_shared<Gap>(0.2, 0.1, 0),
                   std::move(chart)});
  }
  BlockPtr titled(const std::string& title, ChartInput chart) const {
    chart.alt = title;
    return titled(title, line_chart(std::move(chart), high_));
  }

  BlockPtr weights() const {
    ChartInput chart;
    for (const Visit& visit : desk_.note.history) {
      if (!visit.weight) continue;
      chart.points.push_back({visit.date.value, visit.weight->value.in_kg(),
                              shown(visit.weight->value, desk_.voice),
                              locale_.short_date(visit.date.value)});
    }
    if (chart.points.size() < fewest_weights) return nullptr;
    return titled(words_.say(Phrase::note_weight), std::move(chart));
  }

  /// Of the place that was measured most often, how long it was when it came and when it left.
  BlockPtr coat() const {
    std::array<std::size_t, region_count> times{};
    const auto count = [&](const std::vector<RegionState>& states) {
      for (const RegionState& state : states) {
        if (state.length) ++times[static_cast<std::size_t>(state.place.region)];
      }
    };
    for (const Visit& visit : desk_.note.history) {
      count(visit.came_in.regions);
      count(visit.went_out);
    }
    const auto most = std::ranges::max_element(times);
    const auto region = static_cast<Region>(most - times.begin());
    ChartInput chart;
    std::optional<Date> before;
    std::size_t days = 0;
    const auto add = [&](const std::vector<RegionState>& states, Date day, bool after) {
      const auto state = std::ranges::find_if(
          states, [&](const RegionState& one) { return one.length && one.place.region == region; });
      if (state == states.end()) return;
      const bool new_day = before != day;
      days += new_day ? 1 : 0;
      before = day;
      chart.points.push_back({day, state->length->in_mm(), shown(*state->length, desk_.voice),
                              new_day ? locale_.short_date(day) : std::string(), after});
    };
    for (const Visit& visit : desk_.note.history) {
      add(visit.came_in.regions, visit.date.value, false);
      add(visit.went_out, visit.date.value, true);
    }
    if (days < 2 || chart.points.size() < fewest_lengths) return nullptr;
    const std::string where = places_text({{region, Side::both}}, desk_.voice);
    return titled(words_.say(Phrase::note_coat, {where}), std::move(chart));
  }

  std::vector<ChartPoint> weeks_between() const {
    std::vector<ChartPoint> out;
    const auto& history = desk_.note.history;
    for (std::size_t i = 1; i < history.size(); ++i) {
      const auto days = (history[i].date.value - history[i - 1].date.value).count();
      if (days <= 0) continue;
      const double weeks = static_cast<double>(days) / 7;
      out.push_back({history[i].date.value, weeks, std::to_string(static_cast<int>(weeks + 0.5)),
                     locale_.short_date(history[i].date.value)});
    }
    return out;
  }

  static std::pair<double, double> least_and_most(const std::vector<ChartPoint>& points) {
    const auto [least, most] =
        std::ranges::minmax(points, {}, [](const ChartPoint& point) { return point.value; });
    return {least.value, most.value};
  }
  static bool varies(const std::vector<ChartPoint>& weeks) {
    if (weeks.empty()) return false;
    const auto [least, most] = least_and_most(weeks);
    return most - least > 1;
  }

  BlockPtr intervals(const std::vector<ChartPoint>& weeks) const {
    ChartInput chart;
    chart.points = weeks;
    chart.steps_from = desk_.note.history.front().date.value;
    if (const auto& every = desk_.input.pet.visit_every) {
      chart.reference = static_cast<double>(every->value.about().count()) / 7;
    }
    return titled(words_.say(Phrase::note_intervals), std::move(chart));
  }

  /// How far apart the visits were, and what is learned of the coat; null if nothing.
  BlockPtr sentences(const std::vector<ChartPoint>& weeks) const {
    std::string text;
    if (!weeks.empty()) {
      const auto [least, most] = least_and_most(weeks);
      const auto rounded = [](double value) { return static_cast<int>(value + 0.5); };
      text = varies(weeks) ? words_.say(Phrase::note_apart, {rounded(least), rounded(most)})
                           : words_.say(Phrase::note_steady, {rounded((least + most) / 2)});
    }
    if (const std::string learned = growth_learned(desk_); !learned.empty()) {
      text += (text.empty() ? "" : " ") + learned;
    }
    return text.empty() ? nullptr : paragraph(std::move(text));
  }

  const NoteDesk& desk_;
  const Words& words_;
  const ReaderLocale& locale_;
  Length high_;
};
}  // namespace

BlockPtr note_trends(const NoteDesk& desk, bool dense) {
  return TrendMaker(desk, dense).make();
}
}  // namespace furnish
