#include "output/content_operators.h"

#include <catch2/catch.hpp>

#include <qpdf/BufferInputSource.hh>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFTokenizer.hh>

#include <string>
#include <utility>
#include <vector>

#include "output/pdf_draw.h"
#include "sample_page.h"

using namespace furnish;

namespace {
/// Operators and where each ends.
using Found = std::vector<std::pair<std::string, std::size_t>>;

Found by_ours(std::string_view content) {
  Found out;
  ContentOperators operators(content);
  for (auto word = operators.next(); !word.empty(); word = operators.next()) {
    out.emplace_back(word, operators.position());
  }
  return out;
}

Found by_library(const std::string& content) {
  Found out;
  QPDFTokenizer tokenizer;
  tokenizer.allowEOF();
  const auto input = std::make_shared<BufferInputSource>("content", content);
  while (true) {
    const QPDFTokenizer::Token token = tokenizer.readToken(input, "content", true);
    if (token.getType() == QPDFTokenizer::tt_eof) return out;
    if (token.getType() == QPDFTokenizer::tt_word) {
      out.emplace_back(token.getRawValue(), static_cast<std::size_t>(input->tell()));
    }
  }
}
}  // namespace

TEST_CASE("operators are found as libqpdf's tokenizer finds them", "[output][pdf]") {
  for (const std::string content :
       {"", " ", "q", "1 0 0 RG 2.5 w\nS", "q 1 0 0 -1 0 842 cm\nQ", "-.5 +3 .25 0 rg f*",
        "/P << /MCID 0 /Lang (de) >> BDC\nEMC", "(a (b) \\) c) Tj ' \" T*", "(\\\\) Tj",
        "<00ff> Tj<</A<</B 1>>>>BDC", "[(A) -20 (B)] TJ", "[0 3.5]0 d", "true false null n",
        "% a line (that) is not read\nBT\r%x\rET", "/Name#20x Do/a/b gs", "q\n% ends so",
        "W* n\f\tB*"}) {
    INFO(content);
    CHECK(by_ours(content) == by_library(content));
  }
}

TEST_CASE("operators of a drawn page are those that libqpdf finds", "[output][pdf]") {
  DiagnosticSink sink;
  test::Type type;
  const std::vector<Frame> pages{test::sample_page(type), test::full_page(type)};
  const auto drawn = draw_pdf(pages, test::sample_info(), {}, sink);
  REQUIRE(drawn);
  QPDF pdf;
  pdf.processMemoryFile("drawn", drawn->data(), drawn->size());
  std::size_t operators = 0;
  for (QPDFObjectHandle page : pdf.getAllPages()) {
    const auto data = page.getKey("/Contents").getStreamData();
    const std::string content(reinterpret_cast<const char*>(data->getBuffer()), data->getSize());
    const Found found = by_ours(content);
    CHECK(found == by_library(content));
    operators += found.size();
  }
  CHECK(operators > 100);
}
