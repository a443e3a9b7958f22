#include "output/check_page.h"

#include <catch2/catch.hpp>
#include <limits>

#include "output/pdf.h"
#include "output/png.h"
#include "output/sample_page.h"
#include "output/svg.h"

using namespace furnish;
using namespace furnish::test;

namespace {
constexpr Size a5{148_mm, 210_mm};
const Contour square = box({{10_mm, 10_mm}, {20_mm, 20_mm}});

Frame with(std::vector<Mark> marks) {
  return {a5, std::move(marks)};
}
}  // namespace

TEST_CASE("A page that is in order passes") {
  Type type;
  DiagnosticSink sink;
  CHECK(check_page(sample_page(type), sink));
  CHECK(check_page(full_page(type), sink));
  CHECK(check_page({{5_mm, 5_mm}, {}}, sink));
  CHECK(sink.all().empty());
}

TEST_CASE("No output is made of a page that cannot be painted, and no crash either") {
  constexpr Length most = Length::micrometres(std::numeric_limits<std::int64_t>::max());
  constexpr Length least = Length::micrometres(std::numeric_limits<std::int64_t>::min());
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const std::vector<Frame> bad{
      {{0_mm, 210_mm}, {}},
      {{148_mm, -210_mm}, {}},
      {{most, most}, {}},
      {{least, least}, {}},
      {{5081_mm, 210_mm}, {}},
      with({TextMark{{10_mm, 10_mm}, nullptr, Ink::text, "body"}}),
      with({StrokeMark{{0_mm, 0_mm}, {most, 0_mm}, 1_mm, Ink::text, Dash::solid}}),
      with({StrokeMark{{0_mm, 0_mm}, {9_mm, 0_mm}, 0_mm, Ink::text, Dash::dashed}}),
      with({StrokeMark{{0_mm, 0_mm}, {9_mm, 0_mm}, -1_mm, Ink::text, Dash::solid}}),
      with({FillMark{{{least, 0_mm}, {9_mm, 9_mm}}, Ink::text}}),
      with({FillMark{{{0_mm, 0_mm}, {-9_mm, 9_mm}}, Ink::text}}),
      with({PathMark{{square}, Ink::text, Ink::text, 0_mm, Dash::solid}}),
      with({PathMark{{{{0_mm, 0_mm}, {{{least, most}, {0_mm, 0_mm}, {0_mm, 0_mm}}}, true}},
                     Ink::text,
                     std::nullopt,
                     0_mm,
                     Dash::solid}}),
      with({HatchMark{{square}, 45, 0_mm, 0.1_mm, Ink::text, false}}),
      with({HatchMark{{square}, 45, -1_mm, 0.1_mm, Ink::text, false}}),
      with({HatchMark{{square}, 45, 1_um, 0.1_mm, Ink::text, false}}),
      with({HatchMark{{square}, 45, 100_um, 0.1_mm, Ink::text, true}}),
      with({HatchMark{{square}, nan, 1_mm, 0.1_mm, Ink::text, false}}),
      with({OpenTag{Structure::paragraph, {}, {}}}),
      with({CloseTag{}}),
      with({OpenTag{Structure::paragraph, {}, {}}, CloseTag{}, CloseTag{}}),
      with({OpenTag{Structure::figure, {}, {}}, CloseTag{}}),
      with({OpenTag{Structure::row, {}, {}}, CloseTag{}}),
      with({OpenTag{Structure::cell, {}, {}}, CloseTag{}}),
      with({OpenTag{Structure::table, {}, {}}, OpenTag{Structure::paragraph, {}, {}}, CloseTag{},
            CloseTag{}}),
      with({LinkMark{{{0_mm, 0_mm}, {9_mm, 9_mm}}, "", "says"}}),
      with({LinkMark{{{0_mm, 0_mm}, {9_mm, 9_mm}}, "id", ""}})};
  for (std::size_t i = 0; i < bad.size(); ++i) {
    INFO("page " << i);
    DiagnosticSink pdf, png, svg;
    CHECK_FALSE(to_pdf({&bad[i], 1}, sample_info(), {}, pdf));
    CHECK_FALSE(to_png(bad[i], sample_info(), 72, png));
    CHECK_FALSE(to_svg(bad[i], sample_info(), svg));
    for (const DiagnosticSink* sink : {&pdf, &png, &svg}) {
      CHECK(sink->error_count() >= 1);
      CHECK(sink->all().front().code == "bad-page");
    }
  }
}

TEST_CASE("Odd pages that can be painted are") {
  const std::vector<Frame> odd{
      with({}),
      with({PathMark{{}, Ink::text, Ink::text, 1_mm, Dash::dotted}}),
      with({PathMark{{{{5_mm, 5_mm}, {}, true}}, Ink::text, Ink::text, 1_mm, Dash::dashed}}),
      with({HatchMark{{}, 45, 1_mm, 0.1_mm, Ink::text, false}}),
      with({HatchMark{{{{5_mm, 5_mm}, {}, true}}, 45, 1_mm, 0.1_mm, Ink::text, true}}),
      with({HatchMark{{square}, 1e9, 1_mm, 0.1_mm, Ink::text, true}}),
      with({StrokeMark{{5_mm, 5_mm}, {5_mm, 5_mm}, 1_mm, Ink::text, Dash::dotted}}),
      with({FillMark{{{0_mm, 0_mm}, {0_mm, 0_mm}}, Ink::tint}}),
      with({OpenTag{Structure::figure, "nothing", "id"}, CloseTag{}})};
  for (const Frame& page : odd) {
    DiagnosticSink sink;
    CHECK(to_pdf({&page, 1}, sample_info(), {}, sink));
    CHECK(to_png(page, sample_info(), 72, sink));
    CHECK(to_svg(page, sample_info(), sink));
    CHECK(sink.all().empty());
  }
}
