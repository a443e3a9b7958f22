#include "output/pdf.h"

#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <clocale>
#include <cstdlib>
#include <locale>
#include <regex>
#include <sstream>

#include "base/text.h"
#include "output/pdf_rules.h"
#include "output/sample_page.h"
#include "output/tool.h"
#include "page/shaped_line.h"

using namespace furnish;
using namespace furnish::test;

namespace {
/// A decimal comma and dots between thousands, where no such locale is installed.
struct Commas : std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '.'; }
  std::string do_grouping() const override { return "\3"; }
};
}  // namespace

TEST_CASE("a paragraph in another language says so to those who have it read aloud", "[pdf]") {
  Type type;
  Frame frame;
  frame.size = {148_mm, 210_mm};
  Composer page(type, frame);
  {
    const TagScope document(frame, Structure::document);
    const auto paragraph = [&](double y, const char* text, const char* language) {
      const TagScope tag(frame, OpenTag{Structure::paragraph, {}, {}, {}, language});
      page.text(20, y, text);
    };
    paragraph(20, "Vientre, izquierda (en inglés):", "");
    paragraph(30, "Lump, pea-sized.", "en-GB");
    paragraph(40, "Llame a su veterinario.", "");
  }
  DiagnosticSink sink;
  DocumentInfo info = sample_info();
  info.language = "es";
  const auto bytes = to_pdf(std::span(&frame, 1), info, {}, sink);
  REQUIRE(bytes);
  CHECK(pdf_faults(*bytes) == std::vector<std::string>{});
  const PdfFile file(*bytes);
  std::vector<std::string> languages;
  for (QPDFObjectHandle element : file.elements()) {
    if (type_of(element) != "/P") continue;
    languages.push_back(element.hasKey("/Lang") ? element.getKey("/Lang").getUTF8Value() : "");
  }
  CHECK(languages == std::vector<std::string>{"", "en-GB", ""});
}

TEST_CASE("qpdf finds nothing to say about a PDF") {
  Type type;
  const TemporaryFolder folder;
  const auto result = run("qpdf --check " + folder.file("a.pdf", sample_pdf(type)));
  INFO(result.out << result.err);
  CHECK(result.status == 0);
  CHECK(result.err.empty());
  CHECK(result.out.find("WARNING") == std::string::npos);
}

TEST_CASE("Fonts are embedded, subset and map to Unicode") {
  Type type;
  const TemporaryFolder folder;
  const auto result = run("pdffonts " + folder.file("a.pdf", sample_pdf(type)));
  REQUIRE(result.status == 0);
  std::istringstream lines(result.out);
  std::string line;
  std::getline(lines, line);
  std::getline(lines, line);
  int fonts = 0;
  for (; std::getline(lines, line); ++fonts) {
    INFO(line);
    CHECK(std::regex_search(line, std::regex("SourceSans3")));
    CHECK(std::regex_search(line, std::regex(" yes +yes +yes +\\d+ +\\d+ *$")));
  }
  CHECK(fonts >= 1);
}

TEST_CASE("Pages have their size, and the file says what it is") {
  Type type;
  const TemporaryFolder folder;
  const auto result = run("pdfinfo -l 2 -isodates " + folder.file("a.pdf", sample_pdf(type)));
  REQUIRE(result.status == 0);
  INFO(result.out);
  // ISO 216: A5 is 148 × 210 mm, A4 210 × 297 mm.
  const auto sizes = matches(result.out, "Page +\\d size: +([\\d.]+ x [\\d.]+) pts");
  REQUIRE(sizes.size() == 2);
  const double expected[2][2] = {{148 / 25.4 * 72, 210 / 25.4 * 72},
                                 {210 / 25.4 * 72, 297 / 25.4 * 72}};
  for (std::size_t i = 0; i < 2; ++i) {
    const auto sides = matches(sizes[i], "([\\d.]+)");
    CHECK(std::stod(sides.at(0)) == Approx(expected[i][0]).margin(0.1));
    CHECK(std::stod(sides.at(1)) == Approx(expected[i][1]).margin(0.1));
  }
  CHECK(result.out.find("Marlow & <Sandy>: kennel card") != std::string::npos);
  CHECK(matches(result.out, "Subject: +(.*)") == std::vector<std::string>{"Card of the day"});
  CHECK(matches(result.out, "CreationDate: +(\\S+)") ==
        std::vector<std::string>{"2026-11-24T00:00:00Z"});
  CHECK(matches(result.out, "Tagged: +(\\S+)") == std::vector<std::string>{"yes"});
  CHECK(matches(result.out, "PDF version: +(\\S+)") == std::vector<std::string>{"1.7"});
}

TEST_CASE("The attachment comes out as it went in") {
  Type type;
  const TemporaryFolder folder;
  const std::string path = folder.file("a.pdf", sample_pdf(type));
  CHECK(run("pdfdetach -save 1 -o " + folder.path("poppler") + " " + path).status == 0);
  CHECK(bytes_of(folder.path("poppler")) == sample_attachment().bytes);
  CHECK(run("pdfdetach -list " + path).out.find("marlow.toml") != std::string::npos);
  CHECK(run("qpdf --show-attachment=marlow.toml " + path).out == sample_attachment().bytes);
}

TEST_CASE("The metadata is XML, with the title as it was given") {
  Type type;
  const TemporaryFolder folder;
  const std::string path = folder.file("a.xmp", PdfFile(sample_pdf(type)).xmp());
  const auto title = run("xmllint --xpath 'string(//*[local-name()=\"title\"])' " + path);
  CHECK(title.status == 0);
  CHECK(std::string(trimmed(title.out)) == sample_info().title);
}

TEST_CASE("Links lead to their row on the same page, and the outline to its pages") {
  Type type;
  const PdfFile file(sample_pdf(type));
  auto pages = file.pages();
  REQUIRE(pages.size() == 2);
  for (auto& page : pages) {
    auto link = page.getKey("/Annots").getArrayItem(0);
    CHECK(link.getKey("/Contents").getUTF8Value() == "To the row of the chest");
    auto rectangle = link.getKey("/Rect").getArrayAsRectangle();
    // Cairo rounds the areas of links outwards to whole points.
    CHECK(rectangle.llx == Approx((113_mm).in_points()).margin(1));
    CHECK(rectangle.urx == Approx((133_mm).in_points()).margin(1));
    CHECK(rectangle.ury ==
          Approx(page.getKey("/MediaBox").getArrayAsRectangle().ury - (136_mm).in_points())
              .margin(1));
    auto names = file.root().getKey("/Names").getKey("/Dests").getKey("/Names");
    auto target = link.getKey("/Dest");
    if (target.isString()) {
      for (int i = 0; i + 1 < names.getArrayNItems(); i += 2) {
        if (names.getArrayItem(i).getUTF8Value() == target.getUTF8Value()) {
          target = names.getArrayItem(i + 1);
          break;
        }
      }
    }
    REQUIRE(target.isArray());
    CHECK(target.getArrayItem(0).getObjGen() == page.getObjGen());
  }
  auto first = file.root().getKey("/Outlines").getKey("/First");
  CHECK(first.getKey("/Title").getUTF8Value() == "Marlow");
  CHECK(first.getKey("/First").getKey("/Title").getUTF8Value() == "Trim");
  CHECK(first.getKey("/Next").getKey("/Title").getUTF8Value() == "Sandy");
}

TEST_CASE("Each figure has its own text, each head its direction") {
  Type type;
  DiagnosticSink sink;
  const auto page = [&](const std::string& first, const std::string& second) {
    Frame frame{{148_mm, 210_mm}, {}};
    for (const std::string& alt : {first, second}) {
      const TagScope figure(frame, Structure::figure, alt);
      frame.marks.emplace_back(FillMark{{{1_mm, 1_mm}, {5_mm, 5_mm}}, Ink::text});
    }
    return frame;
  };
  const std::vector<Frame> pages{page("one", "two"), sample_page(type), page("Größe ½", "four")};
  const auto bytes = to_pdf(pages, sample_info(), {}, sink);
  REQUIRE(bytes);
  const PdfFile file(*bytes);
  std::vector<std::string> texts, scopes;
  for (auto element : file.elements()) {
    if (type_of(element) == "/Figure") texts.push_back(element.getKey("/Alt").getUTF8Value());
    if (type_of(element) == "/TH")
      scopes.push_back(element.getKey("/A").getKey("/Scope").getName());
  }
  CHECK(texts == std::vector<std::string>{"one", "two", "Side view of a dog, the chest hatched",
                                          "Größe ½", "four"});
  CHECK(scopes == std::vector<std::string>{"/Column", "/Column", "/Row", "/Row"});
  CHECK(pdf_faults(*bytes) == std::vector<std::string>{});
}

TEST_CASE("The same input gives the same bytes, whatever the time zone and the locale") {
  Type type;
  const std::string once = sample_pdf(type);
  CHECK(sample_pdf(type) == once);
  ::setenv("TZ", "Pacific/Kiritimati", 1);
  ::tzset();
  const std::locale before = std::locale::global(std::locale(std::locale::classic(), new Commas));
  std::setlocale(LC_ALL, "C.UTF-8");
  const std::string elsewhere = sample_pdf(type);
  std::locale::global(before);
  std::setlocale(LC_ALL, "C");
  ::unsetenv("TZ");
  ::tzset();
  CHECK(elsewhere == once);
}

TEST_CASE("What would make a bad PDF is refused") {
  Type type;
  const std::vector<Frame> pages{sample_page(type)};
  DocumentInfo info = sample_info();
  PdfExtras more;
  std::string code = "bad-info";
  DiagnosticSink sink;
  SECTION("no title") {
    info.title = " ";
  }
  SECTION("no language") {
    info.language.clear();
  }
  SECTION("no date") {
    info.date.clear();
  }
  SECTION("not a date") {
    info.date = "2026-02-30";
  }
  SECTION("a title that is not UTF-8") {
    info.title = "\xFF";
  }
  SECTION("an outline to a page that is not there") {
    more.outline = {{"x", 1, 0}};
    code = "bad-outline";
  }
  SECTION("an outline that begins deep") {
    more.outline = {{"x", 0, 1}};
    code = "bad-outline";
  }
  SECTION("an attachment with a path") {
    more.attachments = {{"a/b", "", "text/plain", ""}};
    code = "bad-attachment";
  }
  SECTION("two attachments of one name") {
    more.attachments = {{"a", "", "text/plain", ""}, {"a", "", "text/plain", ""}};
    code = "bad-attachment";
  }
  CHECK_FALSE(to_pdf(pages, info, more, sink));
  REQUIRE(sink.error_count() >= 1);
  CHECK(sink.all().front().code == code);
}

TEST_CASE("No pages, and a link to nowhere, are refused") {
  DiagnosticSink sink;
  CHECK_FALSE(to_pdf({}, sample_info(), {}, sink));
  const Frame frame{{148_mm, 210_mm}, {LinkMark{{{1_mm, 1_mm}, {5_mm, 5_mm}}, "no", "says"}}};
  CHECK_FALSE(to_pdf({&frame, 1}, sample_info(), {}, sink));
  CHECK(sink.all().back().code == "dangling-link");
}

TEST_CASE("Words of people reach the file whole, whatever signs are in them") {
  Type type;
  DiagnosticSink sink;
  Frame frame{{148_mm, 210_mm}, {}};
  Composer on(type, frame);
  {
    const TagScope title(frame, Structure::title, "", "it's [a] \\ 'name'");
    on.text(10, 30, "S EMC (f) \\ ' <feed> %");
  }
  {
    const TagScope figure(frame, Structure::figure, "]]> ' \\ (");
    on.rule(10, 40, 50, 0.3);
  }
  {
    const TagScope link(frame, Structure::link);
    frame.marks.emplace_back(
        LinkMark{{{1_mm, 1_mm}, {5_mm, 5_mm}}, "it's [a] \\ 'name'", "( \\ '"});
    on.text(10, 50, "there");
  }
  DocumentInfo info{"( \\ ' ]]> \x01 & \xF0\x9F\x90\xA9", "<b>", "vi", "2026-11-24"};
  const PdfExtras more{{{"it's ( \\", 0, 0}},
                       {{"a (b) 'c'.toml", std::string("\0\xFF", 2), "text/plain", ""}}};
  const auto bytes = to_pdf({&frame, 1}, info, more, sink);
  REQUIRE(bytes);
  CHECK(pdf_faults(*bytes) == std::vector<std::string>{});
  const PdfFile file(*bytes);
  CHECK(file.info().getKey("/Title").getUTF8Value() == info.title);
  const TemporaryFolder folder;
  const std::string path = folder.file("a.pdf", *bytes);
  CHECK(run("pdftotext -raw " + path + " -").out.starts_with("S EMC (f) \\ ' <feed> %"));
  CHECK(run("qpdf --check " + path).status == 0);
}

TEST_CASE("names of what is attached are in the order of their bytes, as they are looked up") {
  Type type;
  DiagnosticSink sink;
  const std::vector<Frame> pages{sample_page(type)};
  std::vector<Attachment> files;
  for (const char* const name : {"b\u00E9.toml", "z.toml", "\u0160.toml", "(a.toml", "A.toml"}) {
    files.emplace_back().name = name;
    files.back().bytes = "x";
  }
  const auto bytes = to_pdf(pages, sample_info(), {{}, files}, sink);
  REQUIRE(bytes);
  const PdfFile file(*bytes);
  auto names = file.root().getKey("/Names").getKey("/EmbeddedFiles").getKey("/Names");
  std::vector<std::string> written;
  for (int i = 0; i < names.getArrayNItems(); i += 2) {
    written.push_back(names.getArrayItem(i).getStringValue());
  }
  REQUIRE(written.size() == files.size());
  CHECK(std::ranges::is_sorted(written));
}
