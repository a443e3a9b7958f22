#include "sheet/style_sheet.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>
#include <sstream>

#include "output/pdf.h"
#include "output/tool.h"
#include "page/measured_rule.h"
#include "sheet/desk.h"
#include "sheet/style_rows.h"
#include "sheet/style_table.h"

namespace furnish {
namespace {
using test::Desk;

/// A grey print, 600 dots an inch.
struct Print {
  std::size_t width = 0, height = 0;
  std::string grey;
  bool dark(std::size_t x, std::size_t y) const {
    return static_cast<unsigned char>(grey[y * width + x]) < 100;
  }
};
constexpr double dots_per_mm = 600 / 25.4;

Print printed(const Sheet& sheet) {
  DiagnosticSink sink;
  const auto pdf = to_pdf(std::span(&sheet.page.frame, 1), sheet.info, {}, sink);
  REQUIRE(pdf);
  const test::TemporaryFolder folder;
  const std::string file = folder.file("sheet.pdf", *pdf);
  REQUIRE(
      test::run("pdftoppm -r 600 -gray -singlefile " + file + " " + folder.path("sheet")).status ==
      0);
  std::istringstream in(test::bytes_of(folder.path("sheet.pgm")));
  std::string magic;
  int most = 0;
  Print print;
  in >> magic >> print.width >> print.height >> most;
  REQUIRE(magic == "P5");
  in.get();
  print.grey.resize(print.width * print.height);
  in.read(print.grey.data(), static_cast<std::streamsize>(print.grey.size()));
  REQUIRE(static_cast<std::size_t>(in.gcount()) == print.grey.size());
  REQUIRE(in.peek() == std::istringstream::traits_type::eof());
  return print;
}

/// Where a bar's ink is: columns that are dark from under its notches to its foot. Hatching never
/// is.
struct Measured {
  double solid = 0, end = 0;  // mm from the left end
};
Measured measured(const Print& print, Point corner, Length high, Length most) {
  const auto dots = [](Length length) {
    return static_cast<std::size_t>(length.in_mm() * dots_per_mm + 0.5);
  };
  const std::size_t left = dots(corner.x), top = dots(corner.y + MeasuredRule::notch_depth) + 2,
                    bottom = dots(corner.y + high) - 2;
  const auto full = [&](std::size_t x) {
    for (std::size_t y = top; y < bottom; ++y) {
      if (!print.dark(x, y)) return false;
    }
    return true;
  };
  Measured out;
  std::size_t x = left;
  while (x < print.width && full(x)) ++x;
  out.solid = static_cast<double>(x - left) / dots_per_mm;
  const std::size_t far = std::min(print.width, left + dots(most) + 24);
  for (std::size_t at = left; at < far; ++at) {
    if (full(at)) out.end = static_cast<double>(at + 1 - left) / dots_per_mm;
  }
  return out;
}

std::vector<FillMark> fills(const Frame& frame) {
  std::vector<FillMark> out;
  for (const Mark& mark : frame.marks) {
    if (const auto* fill = std::get_if<FillMark>(&mark)) out.push_back(*fill);
  }
  return out;
}

std::vector<StyleRow> rows_of(Desk& table, const test::Kennel& kennel) {
  const SheetInput input = table.input(kennel, "A4", kinds::style);
  return style_rows({input, table.voice()});
}

/// The side with what to do if: the other one, where there is one.
Frame back_of(const Sheet& sheet) {
  return sides(sheet.page).back();
}

std::string rows_text(Desk& table) {
  const auto kennel = table.kennel();
  std::string out;
  for (const StyleRow& row : rows_of(table, kennel)) {
    if (row.opens_group) out += row.tool + "\n";
    out += std::string("  ") + (row.differs ? "*" : "") + row.names + "\n";
  }
  // The space between a number and its unit is a narrow one that does not break.
  for (std::size_t at; (at = out.find("\u202F")) != std::string::npos;) out.replace(at, 3, " ");
  return out;
}
}  // namespace

// Measured with another program's eyes: poppler's print of the page.
TEST_CASE("bars and rule of the style sheet are as long as the plan says", "[style]") {
  Desk table(test::sample("lantern-street"));
  for (const char* pet : {"marlow", "pip", "clementine"}) {
    const auto kennel = table.kennel(pet);
    const auto sheet = table.style(kennel);
    REQUIRE(sheet);
    const Print print = printed(*sheet);
    // Bars begin at the left edge, in the order of the rows; one of a range has its low end solid.
    // What is shorter than 2 mm has a number and no bar.
    std::vector<LengthRange> wanted;
    for (const StyleRow& row : rows_of(table, kennel)) {
      if (row.kind != RowKind::cut || !row.left || row.natural) continue;
      CHECK(has_bar(row) == (row.left->low >= 2_mm));
      if (row.left->low >= 2_mm) wanted.push_back(*row.left);
    }
    std::size_t found = 0;
    for (const FillMark& bar : fills(sheet->page.frame)) {
      if (bar.area.size.height != MeasuredRule::bar_height || bar.area.left() != 12_mm) continue;
      REQUIRE(found < wanted.size());
      const LengthRange left = wanted[found++];
      const Measured ink = measured(print, bar.area.origin, MeasuredRule::bar_height, left.high);
      INFO(pet << ", bar " << found << ": " << left.low.in_mm() << " to " << left.high.in_mm());
      CHECK(std::abs(ink.solid - left.low.in_mm()) < 0.1);
      CHECK(std::abs(ink.end - left.high.in_mm()) < 0.1);
    }
    CHECK(found == wanted.size());
    CHECK(found >= 5);
    const auto all = fills(sheet->page.frame);
    const auto rule =
        std::ranges::find(all, 50_mm, [](const FillMark& fill) { return fill.area.size.width; });
    REQUIRE(rule != all.end());
    std::size_t x = static_cast<std::size_t>(rule->area.left().in_mm() * dots_per_mm + 0.5);
    const std::size_t from = x,
                      y = static_cast<std::size_t>(
                          (rule->area.top() + rule->area.size.height / 2).in_mm() * dots_per_mm);
    while (print.dark(x, y)) ++x;
    CHECK(std::abs(static_cast<double>(x - from) / dots_per_mm - 50) < 0.1);
  }
}

TEST_CASE("rows follow the tools, and what no tool may touch comes first", "[style]") {
  Desk table = test::desk(R"(
[pet]
name = "Rex"
coat = "double"
[[alert]]
level = "danger"
text  = "Stitches."
avoid = ["left hock"]
[trim]
body     = { brush = true }
hocks    = { comb = "1/2 in", over = "30" }
pads     = { blade = "30" }
sanitary = { blade = "10" }
breeches = { shears = "thinning", leave = "60 mm" }
chest    = { shears = "thinning", leave = "30 mm" }
)");
  CHECK(rows_text(table) == R"(No tool
  *left hock
Brush, no cut
  body
#30
  pads
#10
  sanitary area
½ in comb over #30
  right hock
Thinning shears
  breeches
  chest
)");
}

TEST_CASE("a row says what stands in for a tool that the drawer lacks", "[style]") {
  Desk table = test::desk(R"(
[pet]
name = "Rex"
coat = "curly"
[trim]
back = { comb = "3/8 in", over = "30" }
)",
                          "[kit]\nblades = [\"30\", \"4F\"]\ncombs = [\"1/8 in\"]\n");
  const auto sheet = table.style(table.kennel());
  REQUIRE(sheet);
  CHECK(test::says(sheet->page.frame, "#4F"));
  CHECK(test::says(sheet->page.frame, "instead of ⅜ in comb over #30, up to 7.1\u202Fmm longer"));
}

TEST_CASE("contingencies come from the file", "[style]") {
  Desk plain = test::desk("[pet]\nname = \"Rex\"\ncoat = \"smooth\"\n");
  Desk ill = test::desk(
      "[pet]\nname = \"Rex\"\ncoat = \"double\"\n[health]\nconditions = [\"seizures\"]\n"
      "[build]\nnose = \"short\"\n[handling]\nstop = \"shakes\"\n");
  const auto easy = plain.style(plain.kennel()), hard = ill.style(ill.kennel());
  REQUIRE(easy);
  REQUIRE(hard);
  for (const char* only :
       {"A fit:", "Pants hard, gums blue or pale:", "Shakes:", "Never shave this coat for a mat"}) {
    INFO(only);
    CHECK(test::says(back_of(*hard), only));
    CHECK_FALSE(test::says(back_of(*easy), only));
  }
}

TEST_CASE("with sources asked for, each part names its file and line", "[style]") {
  Desk table = test::desk(
      "[pet]\nname = \"Rex\"\n[trim]\nears = { shears = \"straight\", leave = \"20 mm\" }\n");
  const auto kennel = table.kennel();
  SheetInput input = table.input(kennel, "A4", kinds::style);
  input.source = [](const SourceSpan& span) { return "line " + std::to_string(span.begin.line); };
  DiagnosticSink sink;
  const auto sheet = make_style_sheet({input, table.voice()}, sink);
  REQUIRE(sheet);
  CHECK(test::says(sheet->page.frame, "line 4"));
}
}  // namespace furnish
