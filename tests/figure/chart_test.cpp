#include "figure/chart.h"

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include <algorithm>

#include "figure/label_places.h"
#include "figure/setting.h"

namespace furnish {
namespace {
using namespace std::chrono;
constexpr Date start = sys_days(year(2024) / 1 / 5);

ChartPoint point(int day, double value) {
  const Date date = start + days(day);
  return {date, value, fmt::format("{:.1f} kg", value), to_iso(date)};
}

Frame drawn(ChartInput input, const HandHeld& page, Length width = 80_mm, Length height = 26_mm) {
  const BlockPtr chart = line_chart(std::move(input), height);
  const Extent extent = chart->measure(width, page.setting());
  CHECK(extent.wanted == height);
  Frame frame{{width, height}, {}};
  chart->place({{}, frame.size}, page.setting(), frame);
  return frame;
}

struct Said {
  std::string text;
  Rect ink;
};
std::vector<Said> texts(const Frame& frame) {
  std::vector<Said> out;
  for (const Mark& mark : frame.marks) {
    const auto* text = std::get_if<TextMark>(&mark);
    if (text == nullptr) continue;
    Rect ink = text->line->ink();
    ink.origin = {ink.origin.x + text->baseline.x, ink.origin.y + text->baseline.y};
    out.push_back({text->line->text(), ink});
  }
  return out;
}
bool says(const std::vector<Said>& all, const std::string& text) {
  return std::ranges::any_of(all, [&](const Said& said) { return said.text == text; });
}

/// Middles of the ticks on the axis, in order of drawing.
std::vector<Length> ticks(const Frame& frame) {
  std::vector<Length> out;
  for (const Mark& mark : frame.marks) {
    const auto* stroke = std::get_if<StrokeMark>(&mark);
    if (stroke != nullptr && stroke->from.x == stroke->to.x && stroke->ink == Ink::quiet) {
      out.push_back(stroke->from.x);
    }
  }
  std::ranges::sort(out);
  return out;
}

void check_clean(const Frame& frame, const ChartInput& input) {
  const std::vector<Said> all = texts(frame);
  const Rect page{{}, frame.size};
  for (std::size_t i = 0; i < all.size(); ++i) {
    INFO(all[i].text);
    CHECK(contains(page, all[i].ink));
    for (std::size_t j = 0; j < i; ++j) {
      INFO(all[j].text);
      CHECK_FALSE(overlap(all[i].ink, all[j].ink));
    }
  }
  const auto& points = input.points;
  const auto [low, high] = std::ranges::minmax_element(points, {}, &ChartPoint::value);
  for (const ChartPoint& must : {points.front(), points.back(), *low, *high}) {
    INFO(must.label);
    CHECK(says(all, must.label));
  }
  CHECK(says(all, points.front().date));
  CHECK(says(all, points.back().date));
}
}  // namespace

TEST_CASE("a chart shows values at true distances, with their numbers", "[figure][chart]") {
  const HandHeld page;
  ChartInput input;
  input.points = {point(0, 5.2), point(50, 5.1), point(200, 4.6)};
  input.alt = "Weight";
  const Frame frame = drawn(input, page);
  check_clean(frame, input);
  const auto at = ticks(frame);
  REQUIRE(at.size() == 3);
  CHECK((at[1] - at[0]) / (at[2] - at[0]) == Approx(0.25).margin(0.001));
  const auto all = texts(frame);
  CHECK(says(all, "5.1 kg"));
  // The lower the value, the lower its number.
  const auto top = [&](const std::string& text) {
    return std::ranges::find(all, text, &Said::text)->ink.top();
  };
  CHECK(top("5.2 kg") < top("5.1 kg"));
  CHECK(top("5.1 kg") < top("4.6 kg"));
  const auto& tag = std::get<OpenTag>(frame.marks.front());
  CHECK(tag.role == Structure::figure);
  CHECK(tag.alt == "Weight: 5.2 kg (2024-01-05); 5.1 kg (2024-02-24); 4.6 kg (2024-07-23)");
}

TEST_CASE("numbers of one day are told apart, and those side by side are two", "[figure][chart]") {
  const HandHeld page;
  ChartInput input;
  for (const int day : {0, 40, 80, 120}) {
    input.points.push_back(point(day, 5.1));
    input.points.push_back(point(day, 4.8));
    input.points.back().after = true;
  }
  const Frame frame = drawn(input, page);
  check_clean(frame, input);
  int open = 0, solid = 0;
  for (const Mark& mark : frame.marks) {
    const auto* dot = std::get_if<PathMark>(&mark);
    if (dot == nullptr || !dot->fill) continue;
    (dot->fill == Ink::paper ? open : solid) += 1;
    CHECK(dot->stroke.has_value() == (dot->fill == Ink::paper));
  }
  CHECK(open == 4);
  CHECK(solid == 4);
  const std::vector<Said> all = texts(frame);
  for (const Said& one : all) {
    for (const Said& other : all) {
      const bool numbers = one.text.ends_with("kg") && other.text.ends_with("kg");
      const bool beside = one.ink.right() <= other.ink.left() &&
                          one.ink.top() < other.ink.bottom() && other.ink.top() < one.ink.bottom();
      if (numbers && beside) CHECK(other.ink.left() - one.ink.right() >= 1.4_mm);
    }
  }
}

TEST_CASE("a small change looks small", "[figure][chart]") {
  const HandHeld page;
  const auto drop = [&](double from, double to) {
    ChartInput input;
    input.points = {point(0, from), point(100, to)};
    const Frame frame = drawn(input, page);
    for (const Mark& mark : frame.marks) {
      if (const auto* path = std::get_if<PathMark>(&mark); path != nullptr && path->stroke) {
        const Contour& line = path->contours.front();
        return (line.curves.back().end.y - line.start.y).in_mm();
      }
    }
    return 0.0;
  };
  // A fifth of the value is the whole height, a hundredth a twentieth of that.
  CHECK(drop(10, 9.9) == Approx(drop(10, 8) / 20).margin(0.01));
  CHECK(drop(10, 8) == Approx(drop(10, 5)).margin(0.01));
  CHECK(drop(10, 10) == 0);
}

TEST_CASE("a chart of one value, of equal values, of many, and of gaps is clean",
          "[figure][chart]") {
  const HandHeld page;
  std::uint32_t state = 11;
  const auto draw = [&](int below) {
    state = state * 1664525 + 1013904223;
    return static_cast<int>((state >> 8) % static_cast<std::uint32_t>(below));
  };
  int labels = 0, points = 0;
  for (int round = 0; round < 400; ++round) {
    ChartInput input;
    const int count = round % 4 == 0 ? 1 + draw(3) : 1 + draw(30), kind = draw(4);
    int day = 0;
    for (int i = 0; i < count; ++i) {
      const double value = kind == 0 ? 5 : kind == 1 ? 4 + i * 0.1 : 1 + draw(90) / 10.0;
      input.points.push_back(point(day, value));
      day += draw(12) == 0 ? 400 + draw(1500) : draw(20) == 0 ? 0 : 1 + draw(70);
    }
    if (draw(3) == 0) input.reference = 1 + draw(90) / 10.0;
    if (input.reference && draw(2) == 0) input.reference_label = "goal";
    if (draw(3) == 0) input.steps_from = start - days(draw(80));
    const Length height = 18_mm + 1_mm * draw(12), width = 70_mm + 1_mm * draw(110);
    INFO("round " << round << ": " << count << " points of kind " << kind);
    const Frame frame = drawn(input, page, width, height);
    check_clean(frame, input);
    if (!input.reference_label.empty()) CHECK(says(texts(frame), "goal"));
    points += count;
    for (const Said& said : texts(frame)) labels += said.text.ends_with("kg") ? 1 : 0;
    // Ticks are at true distances.
    const auto at = ticks(frame);
    const Date first = input.steps_from ? std::min(*input.steps_from, start) : start;
    const auto whole = (input.points.back().day - first).count();
    if (input.steps_from || whole == 0 || at.front() == at.back()) continue;
    for (const ChartPoint& each : input.points) {
      const double share =
          static_cast<double>((each.day - first).count()) / static_cast<double>(whole);
      const Length wanted = at.front() + scaled(at.back() - at.front(), share);
      CHECK(
          std::ranges::any_of(at, [&](Length tick) { return std::abs((tick - wanted).um()) < 5; }));
    }
  }
  CHECK(labels * 2 > points);  // most have their numbers
}

TEST_CASE("steps hold from visit to visit and stand on the axis", "[figure][chart]") {
  const HandHeld page;
  ChartInput input;
  input.points = {point(56, 8), point(140, 12), point(182, 6)};
  input.steps_from = start;
  input.reference = 8;
  input.reference_label = "8 weeks";
  const Frame frame = drawn(input, page);
  check_clean(frame, input);
  std::vector<const PathMark*> paths;
  for (const Mark& mark : frame.marks) {
    if (const auto* path = std::get_if<PathMark>(&mark)) paths.push_back(path);
  }
  REQUIRE(paths.size() == 2);
  CHECK(paths[0]->fill == Ink::tint);
  const Contour& line = paths[1]->contours.front();
  // Across, up, across, down, across.
  REQUIRE(line.curves.size() == 5);
  const Length axis = paths[0]->contours.front().curves.back().end.y;
  CHECK((axis - line.start.y) / (axis - line.curves[1].end.y) == Approx(8.0 / 12).margin(0.001));
  CHECK((axis - line.curves[4].end.y) / (axis - line.start.y) == Approx(6.0 / 8).margin(0.001));
  CHECK(line.start.x == Length{});
  const Length whole = line.curves[4].end.x;
  CHECK(line.curves[0].end.x / whole == Approx(56.0 / 182).margin(0.001));
}

TEST_CASE("a segment crosses a rectangle only with its inside", "[figure][chart]") {
  const Rect r{{10_mm, 10_mm}, {10_mm, 5_mm}};
  CHECK(crosses(r, {0_mm, 12_mm}, {30_mm, 12_mm}));
  CHECK(crosses(r, {12_mm, 12_mm}, {13_mm, 13_mm}));
  CHECK(crosses(r, {5_mm, 20_mm}, {20_mm, 5_mm}));
  CHECK_FALSE(crosses(r, {0_mm, 10_mm}, {30_mm, 10_mm}));
  CHECK_FALSE(crosses(r, {0_mm, 12_mm}, {9_mm, 12_mm}));
  CHECK_FALSE(crosses(r, {5_mm, 14_mm}, {11_mm, 30_mm}));
  CHECK_FALSE(crosses(r, {20_mm, 0_mm}, {20_mm, 30_mm}));
}
}  // namespace furnish
