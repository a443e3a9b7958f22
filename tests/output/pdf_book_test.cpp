#include "output/pdf_book.h"

#include <fmt/format.h>
#include <algorithm>
#include <cmath>
#include <regex>
#include <set>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "output/compact_content.h"
#include "output/pdf_rules.h"
#include "output/sample_page.h"
#include "output/seal.h"
#include "output/shared_type.h"

namespace furnish::test {
namespace {
/// One line on a page of its own, which may lead to a page of the book.
Frame page_of(Type& type, const std::string& text, const std::string& leads_to = {}) {
  Frame page{{148_mm, 210_mm}, {}};
  Composer composer(type, page);
  const TagScope document(page, Structure::document);
  {
    const TagScope title(page, Structure::title);
    composer.text(20, 30, text);
  }
  if (!leads_to.empty()) {
    const TagScope link(page, Structure::link);
    page.marks.emplace_back(LinkMark{{{20_mm, 45_mm}, {40_mm, 6_mm}}, leads_to, "see " + text});
    composer.text(20, 50, "see " + text);
  }
  return page;
}
}  // namespace

namespace {
/// Two parts, an index before them that leads to the second, and an outline.
std::string book_of(Type& type, PdfStandard standard, DiagnosticSink& sink) {
  std::string bytes;
  PdfBook book(
      [&](std::string_view more) {
        bytes += more;
        return true;
      },
      standard);
  const std::vector<Attachment> file{sample_attachment()};
  const std::vector<Frame> one{sample_page(type)}, two{page_of(type, "Zwölf Öfen")},
      front{page_of(type, "Index", book_page(1))};
  DocumentInfo german = sample_info();
  german.language = "de";
  CHECK(book.add(one, sample_info(), file, PdfBook::Where::body, sink));
  CHECK(book.add(two, german, {}, PdfBook::Where::body, sink));
  CHECK(book.pages() == 2);
  CHECK(book.add(front, sample_info(), {}, PdfBook::Where::front, sink));
  const std::vector<OutlineEntry> outline{{"A", 0, 0}, {"one", 0, 1}, {"two", 1, 1}, {"B", 1, 0}};
  CHECK(book.finish(sample_info(), {outline, {}, {}}, sink));
  return bytes;
}
}  // namespace

TEST_CASE("parts that come one by one make one good PDF, front matter first", "[book]") {
  Type type;
  DiagnosticSink sink;
  const std::string bytes = book_of(type, PdfStandard::ua1, sink);
  CHECK(sink.all().empty());
  CHECK(pdf_faults(bytes) == std::vector<std::string>{});
  CHECK(seal_holds(bytes));

  const PdfFile pdf(bytes);
  const auto pages = pdf.pages();
  REQUIRE(pages.size() == 3);
  QPDFObjectHandle first = pages[0];
  QPDFObjectHandle link = first.getKey("/Annots").getArrayItem(0);
  CHECK(link.getKey("/Dest").getArrayItem(0).getObjGen() == pages[2].getObjGen());
  QPDFObjectHandle shelf = pdf.root().getKey("/Outlines").getKey("/First");
  CHECK(shelf.getKey("/Count").getIntValue() == -2);
  CHECK(shelf.getKey("/First").getKey("/Next").getKey("/Title").getUTF8Value() == "two");
  CHECK(shelf.getKey("/Next").getKey("/Title").getUTF8Value() == "B");
  std::vector<std::string> languages;
  for (QPDFObjectHandle element : pdf.elements()) {
    if (type_of(element) == "/Part") languages.push_back(element.getKey("/Lang").getUTF8Value());
  }
  CHECK(languages ==
        std::vector<std::string>{sample_info().language, sample_info().language, "de"});
}

TEST_CASE("a book of PDF 2.0 leads to elements, of one namespace", "[book]") {
  Type type;
  DiagnosticSink sink;
  const std::string bytes = book_of(type, PdfStandard::ua2, sink);
  CHECK(sink.all().empty());
  CHECK(pdf_faults(bytes) == std::vector<std::string>{});
  CHECK(seal_holds(bytes));
  const PdfFile pdf(bytes);
  QPDFObjectHandle root = pdf.root().getKey("/StructTreeRoot");
  CHECK(root.getKey("/Namespaces").getArrayNItems() == 1);
  QPDFObjectHandle link = pdf.pages().at(0).getKey("/Annots").getArrayItem(0);
  QPDFObjectHandle action = link.getKey("/A");
  CHECK(action.getKey("/D").getArrayItem(0).getObjGen() == pdf.pages().at(2).getObjGen());
  CHECK(type_of(action.getKey("/SD").getArrayItem(0)) == "/H1");
  CHECK(action.getKey("/SD").getArrayItem(0).getKey("/Pg").getObjGen() ==
        pdf.pages().at(2).getObjGen());
}

TEST_CASE("a book whose bytes are not taken fails", "[book]") {
  Type type;
  DiagnosticSink sink;
  PdfBook book([](std::string_view) { return false; });
  const std::vector<Frame> pages{page_of(type, "one")};
  CHECK(book.add(pages, sample_info(), {}, PdfBook::Where::body, sink));
  CHECK_FALSE(book.finish(sample_info(), {}, sink));
  CHECK(sink.has_errors());
}

TEST_CASE("a line is kept only for glyphs that nobody met before", "[book]") {
  Type type;
  SharedType shared;
  shared.meet(page_of(type, "abc"));
  CHECK(shared.page().marks.size() == 1);
  shared.meet(page_of(type, "cab"));
  CHECK(shared.page().marks.size() == 1);
  shared.meet(page_of(type, "abd"));
  CHECK(shared.page().marks.size() == 2);
}

namespace {
std::string compact_content(const std::string& content) {
  const PageContent page{content, 595, 842};
  return compact_contents({&page, 1}).pages.front().content;
}
}  // namespace

TEST_CASE("the squares of a code are drawn as a mask with the same squares in the same places",
          "[book]") {
  // A chess board of 16 squares by 14, each of 1.5 points, whose last line is 0.01 off.
  std::string board;
  for (int y = 0; y < 14; ++y) {
    for (int x = y % 2; x < 16; x += 2) {
      board += fmt::format("{} {} 1.5 1.5 re\n", 10 + 1.5 * x, 20 + 1.5 * y + (y == 13 ? 0.01 : 0));
    }
  }
  const std::string mask = compact_content(board + "10 20 m\nf*\n");
  // The row of the least y is the mask's first, wherever the page has its top: (0, 1) of an image
  // is its upper left corner (ISO 32000-1, 8.9.5). 0 is dark.
  const std::string two_rows = "5555AAAA";
  std::string rows;
  for (int i = 0; i < 7; ++i) rows += two_rows;
  CHECK(mask == "q\n24.000 0 0 -21.010 10.000 41.010 cm\nBI/W 16/H 14/IM true/F/AHx ID " + rows +
                    ">\nEI\nQ\n");
  // Anything else stays: stroked, one square off, or one twice.
  for (const std::string& other :
       {board + "S\n", board + "10.7 20 1.5 1.5 re\nf\n", board + "10 20 1.5 1.5 re\nf*\n"}) {
    CHECK(compact_content(other).find("BI") == std::string::npos);
  }
}

TEST_CASE("content is drawn with fewer bytes, and nothing but points of paths changes", "[book]") {
  CHECK(compact_content("1.23456 2 m 3.999 4.001 l S\n") == "1.23 2 m\n4 4 l\nS\n");
  CHECK(compact_content("1 2 m 5 2 l 5 8 l 1 8 l h f*\n") == "1 2 4 6 re\nf*\n");
  // Askew, or not closed: as it was.
  CHECK(compact_content("1 2 m 5 2 l 5 8 l 1 9 l h f\n") == "1 2 m\n5 2 l\n5 8 l\n1 9 l\nh\nf\n");
  CHECK(compact_content("-0.004 -0.126 m\n") == "0 -.13 m\n");
  CHECK(compact_content("0 0 m 9.26 2.22 0 14 15 6 c S\n") == "0 0 m\n9.3 2.2 0 14 15 6 c\nS\n");
  std::string dots;
  for (int i = 0; i < 8; ++i) dots += std::to_string(i * 2) + " 1 m h\n";
  dots += "4 3 m h\n6 3 m h\n";
  CHECK(compact_content(dots + "S\n") == "[0 2.0000]0 d\n0 1 m\n15 1 l\n4 3 m\n7 3 l\nS\n[]0 d\n");
  // Lines that run on.
  CHECK(compact_content("0 0 m 1 .01 l 2 -.02 l 3 0 l 3 3 l S\n") == "0 0 m\n3 0 l\n3 3 l\nS\n");
  const std::string text = "BT\n.123 0 0 1.5 3 4 Tm\n[(a\\(b m 1.234 2 l)11(c)]TJ\nET\n";
  CHECK(compact_content(text) == text);
}

namespace {
/// A closed outline with tufts all round, as of a dog; turned over, `scale` times as large, and
/// moved.
std::string outline(bool mirrored, double scale, double x, double y) {
  std::string out;
  const auto point = [&](double angle, double radius) {
    const double across = radius * std::cos(angle) * (mirrored ? -1 : 1);
    return fmt::format("{:.3f} {:.3f} ", scale * (100 + across) + x,
                       scale * (80 + 0.6 * radius * std::sin(angle)) + y);
  };
  constexpr int tufts = 40;
  constexpr double step = 2 * 3.141592653589793 / tufts;
  out += point(0, 60) + "m\n";
  for (int i = 0; i < tufts; ++i) {
    out += point(step * (i + 0.3), 66 + i % 7) + point(step * (i + 0.7), 69) +
           point(step * (i + 1), 60) + "c\n";
  }
  return out + "h\nB*\n";
}
}  // namespace

TEST_CASE("what is drawn twice is one shape, also turned over and smaller", "[book]") {
  const std::string before = "1 1 1 rg\n0 0 0 RG\n.7 w\n", after = "0 1 1 rg\n1 2 3 4 re\nf\n";
  const std::string one = before + outline(false, 1, 20, 30) + after,
                    two = before + outline(true, 0.8, 200, 300) + after;
  const std::vector<PageContent> pages{{one, 595, 842}, {two, 595, 842}};
  const CompactContents out = compact_contents(pages);
  REQUIRE(out.shapes.size() == 1);
  CHECK(out.pages[0].shapes == std::set<std::size_t>{0});
  CHECK(out.pages[1].shapes == std::set<std::size_t>{0});
  CHECK_FALSE(out.shapes[0].of_many);
  // The larger is the shape; the smaller has the line's width of its own.
  CHECK(out.pages[0].content == before + "q 1 0 0 1 48 69 cm\n/r0 Do Q\n" + after);
  CHECK(std::regex_search(
      out.pages[1].content,
      std::regex("q -0?\\.8\\d* 0 0 \\.8\\d* [0-9.]+ [0-9.]+ cm\n\\.?0?\\.87\\d w\n/r0 Do Q\n")));
  // Another outline, a dashed one of another size, and too little of it stay where they are.
  const std::string other = before + outline(false, 1, 20, 30) + outline(false, 1.3, 20, 60);
  CHECK(compact_contents(std::vector<PageContent>{{other, 595, 842}}).shapes.size() == 1);
  const std::string dashed = "[3 2] 0 d\n" + other;
  CHECK(compact_contents(std::vector<PageContent>{{dashed, 595, 842}}).shapes.empty());
}

TEST_CASE("hatching is part of a hatched page, on the same lines", "[book]") {
  // Lines 0.9 mm apart on the page's own grid, and then a tenth of a point off it.
  const double step = 0.9 * 72 / 25.4;
  const auto lines = [&](double off) {
    std::string out = "q\n10 10 50 40 re\nW\nn\n.28 w\n";
    for (int i = 5; i < 15; ++i) {
      out += fmt::format("10 {0:.3f} m\n60 {0:.3f} l\n", i * step + off);
    }
    return out + "S\nQ\n";
  };
  const std::string on_grid = lines(0) + lines(0), off_grid = lines(0.1);
  const CompactContents out = compact_contents(std::vector<PageContent>{{on_grid, 595, 842}});
  REQUIRE(out.shapes.size() == 1);
  CHECK(out.shapes[0].of_many);
  CHECK(out.pages[0].content ==
        "q\n10 10 50 40 re\nW\nn\n.28 w\n/r0 Do\nQ\nq\n10 10 50 40 re\nW\nn\n"
        ".28 w\n/r0 Do\nQ\n");
  const std::string& content = out.shapes[0].content;
  CHECK(std::ranges::count(content, 'm') == static_cast<std::ptrdiff_t>(842 / step) + 1);
  CHECK(content.find(fmt::format("{:.3f} m", 7 * step)) != content.npos);
  CHECK(compact_contents(std::vector<PageContent>{{off_grid, 595, 842}}).shapes.empty());
}
}  // namespace furnish::test
