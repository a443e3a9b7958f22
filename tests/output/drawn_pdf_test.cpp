#include <catch2/catch.hpp>

#include <zlib.h>

#include <qpdf/QPDFObjectHandle.hh>
#include <regex>

#include "output/drawn_pdf.h"
#include "output/pdf_draw.h"
#include "output/pdf_objects.h"
#include "output/sample_page.h"
#include "output/squares.h"
#include "output/tool.h"

using namespace furnish;
using namespace furnish::test;

TEST_CASE("A dictionary has its values as they are written") {
  const PdfDict dict(
      "<< /Type /Page % 1\n/Kids [ 1 0 R <</A(\\)>>)>> ]/Count 2 /S<FEFF>/P 12 0 R>>");
  CHECK(dict["/Type"] == "/Page");
  CHECK(dict["/Kids"] == "[ 1 0 R <</A(\\)>>)>> ]");
  CHECK(items_of(dict["/Kids"]) == std::vector<std::string_view>{"1 0 R", "<</A(\\)>>)>>"});
  CHECK(dict["/Count"] == "2");
  CHECK(dict["/S"] == "<FEFF>");
  CHECK(referred_to(dict["/P"]) == 12);
  CHECK(referred_to(dict["/Count"]) == 0);
  CHECK_FALSE(dict.has("/None"));
}

TEST_CASE("A text is read by libqpdf as it was") {
  for (const std::string text : {"plain", "brackets (in (pairs) and \\ alone )",
                                 "M\u00FCsli \u2013 \u05D0", "\U0001F415", ""}) {
    CHECK(QPDFObjectHandle::parse(pdf_text(text)).getUTF8Value() == text);
  }
}

TEST_CASE("What cairo did not write is refused, wherever it ends") {
  Type type;
  DiagnosticSink sink;
  const Frame page = sample_page(type);
  const auto drawn = draw_pdf({&page, 1}, sample_info(), {}, sink);
  REQUIRE(drawn);
  CHECK_NOTHROW(DrawnPdf(*drawn));
  for (std::size_t size = 0; size + 10 < drawn->size(); size += drawn->size() / 50) {
    CHECK_THROWS_AS(DrawnPdf(std::string_view(*drawn).substr(0, size)), std::runtime_error);
  }
}

TEST_CASE("An object stream is whole rows, however long its objects are") {
  for (std::size_t length = 0; length < 40; ++length) {
    std::string pdf;
    PdfObjects out([&](std::string_view bytes) { return pdf += bytes, true; }, {});
    const int root = out.reserve(), more = out.reserve();
    out.add(root, "<</Type/Catalog/Pages 2 0 R>>");
    out.add(more, "(" + std::string(length, 'a') + ")");
    REQUIRE(out.finish(root, 0));
    std::smatch form;
    REQUIRE(std::regex_search(pdf, form, std::regex("/Colors (\\d+)/Columns (\\d+)")));
    const auto at = pdf.find("stream\n") + 7;
    std::string data(10'000, '\0');
    auto size = static_cast<uLongf>(data.size());
    REQUIRE(uncompress(reinterpret_cast<Bytef*>(data.data()), &size,
                       reinterpret_cast<const Bytef*>(pdf.data() + at),
                       static_cast<uLong>(pdf.find("\nendstream") - at)) == Z_OK);
    INFO(length);
    // A row is its filter's number and then a byte a colour and column (ISO 32000-1, 7.4.4.4).
    CHECK(size % (std::stoul(form[1]) * std::stoul(form[2]) + 1) == 0);
  }
}

TEST_CASE("A code is one form, and looks as its path does") {
  PathMark path{{}, Ink::text, std::nullopt, {}, Dash::solid};
  std::uint32_t chance = 1;
  for (int row = 0; row < 33; ++row) {
    for (int column = 0; column < 33; ++column) {
      chance = chance * 1664525 + 1013904223;  // Numerical Recipes' generator
      if (chance >> 31 == 0) continue;
      path.contours.push_back(
          rectangle_contour({{20_mm + 453_um * column, 30_mm + 453_um * row}, {453_um, 453_um}}));
    }
  }
  const auto squares = squares_of(path);
  REQUIRE(squares);
  CHECK(squares->columns == 33);
  CHECK(squares->rows == 33);
  const Frame page{{105_mm, 148_mm}, {path}};
  DiagnosticSink sink;
  const TemporaryFolder folder;
  std::vector<std::string> looks;
  for (const Codes manner : {Codes::forms, Codes::paths}) {
    const auto pdf = to_pdf({&page, 1}, sample_info(), {}, manner, sink);
    REQUIRE(pdf);
    CHECK((pdf->find("/Subtype/Form") != std::string::npos) == (manner == Codes::forms));
    looks.push_back(run("pdftoppm -r 100 -gray " + folder.file("code.pdf", *pdf)).out);
  }
  CHECK(looks[0].size() > 1000);
  CHECK(looks[0] == looks[1]);

  path.contours.back().curves.back().end.x += 1_um;
  CHECK_FALSE(squares_of(path));
  path.contours.pop_back();
  CHECK(squares_of(path));
  path.contours.push_back(path.contours.front());  // twice, and so light
  CHECK_FALSE(squares_of(path));
}
