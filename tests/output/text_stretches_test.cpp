#include "output/text_stretches.h"

#include <catch2/catch.hpp>

#include "base/said_in.h"
#include "output/pdf.h"
#include "output/pdf_rules.h"
#include "output/sample_page.h"
#include "page/shaped_line.h"

using namespace furnish;
using namespace furnish::test;

namespace {
SizedText part(std::string text, Face face = Face::regular) {
  SizedText run;
  run.text = std::move(text);
  run.face = face;
  run.size = TypeSize::at_least(9);
  return run;
}

/// Lines refer to their fonts as long as they are drawn.
FontSet& fonts_of_all() {
  DiagnosticSink sink;
  static const auto fonts = FontSet::open(FURNISH_SOURCE_DIR "/fonts", sink);
  REQUIRE(fonts);
  return *fonts;
}

/// A paragraph in lines of at most so many millimetres.
Frame paragraph(const std::vector<SizedText>& parts, Length width, const std::string& language) {
  DiagnosticSink sink;
  TextShaper shaper(fonts_of_all(), sink, language);
  Frame frame{{100_mm, 100_mm}, {}};
  const TagScope document(frame, Structure::document);
  const TagScope tag(frame, Structure::paragraph);
  Length y = 10_mm;
  for (const auto& line : shaper.shape(parts, width, Breaking::words)->lines) {
    frame.marks.emplace_back(TextMark{{10_mm, y}, line, Ink::text, "body"});
    y += 5_mm;
  }
  return frame;
}

/// "P(Span[en]'lump' ...)"
std::string told(const std::vector<Part>& parts) {
  std::string out;
  for (const Part& part : parts) {
    if (part.element) {
      if (!out.empty()) out += ' ';
      out += pdf_name(part.element->tag);
      if (!part.element->language.empty()) out += "[" + part.element->language + "]";
      out += "(" + told(part.element->parts) + ")";
    } else if (const auto* text = std::get_if<TextMark>(part.mark)) {
      if (!out.empty() && part.range.begin == 0) out += '/';
      out += text->line->text().substr(part.range.begin, part.range.end - part.range.begin);
    }
  }
  return out;
}
std::string structure(const std::vector<SizedText>& parts, Length width = 80_mm) {
  return told(structure_of(paragraph(parts, width, "es")));
}
}  // namespace

TEST_CASE("Words in another language are an element of their own") {
  CHECK(structure({part("Vientre: " + said_in("en-GB", "lump, pea-sized") + " (24 nov).")}) ==
        "Document(P(Span(Vientre: ) Span[en-GB](lump, pea-sized) Span( (24 nov).)))");
  CHECK(structure({part(said_in("en", "Two people."))}) == "Document(P[en](Two people.))");
  CHECK(structure({part("Sin lazo.")}) == "Document(P(Sin lazo.))");
}

TEST_CASE("An element goes on from one line to the next") {
  const std::string told = structure(
      {part("Ojo: " + said_in("en", "lifts the left rear foot when it is touched") + ", hoy.")},
      30_mm);
  INFO(told);
  const std::size_t begin = told.find("Span[en](lifts the left");
  REQUIRE(begin != std::string::npos);
  CHECK(told.substr(begin, told.find(')', begin) - begin).find('/') != std::string::npos);
  CHECK(told.find("Span[en]") == told.rfind("Span[en]"));
}

TEST_CASE("What is heavier than the rest is strong, what is italic is emphasis") {
  CHECK(structure({part("Sujetar", Face::semibold), part(" "), part("bajo el pecho")}) ==
        "Document(P(Strong(Sujetar) Span( bajo el pecho)))");
  CHECK(structure({part("todo", Face::bold), part(" en negrita", Face::bold)}) ==
        "Document(P(todo en negrita))");
  CHECK(structure({part("un "), part("perro", Face::italic)}) ==
        "Document(P(Span(un ) Em(perro)))");
}

TEST_CASE("A line of underscores is drawn and not read") {
  CHECK(structure({part("Mezclado el " + said_in(no_words, "____") + " hoy")}) ==
        "Document(P(Span(Mezclado el )____ Span( hoy)))");
}

TEST_CASE("A PDF says in which language and how strongly words are read") {
  for (const std::string language : {"es", "ar"}) {
    const Frame page = paragraph(
        {part("Sujetar", Face::semibold), part(" " + said_in("en-GB", "under the chest") + " 24")},
        80_mm, language);
    DiagnosticSink sink;
    DocumentInfo info = sample_info();
    info.language = language;
    const auto bytes = to_pdf(std::span(&page, 1), info, {}, sink);
    REQUIRE(bytes);
    CHECK(pdf_faults(*bytes) == std::vector<std::string>{});
    std::size_t english = 0, strong = 0;
    const PdfFile file(*bytes);
    for (auto element : file.elements()) {
      auto lang = element.getKey("/Lang");
      english += lang.isString() && lang.getUTF8Value() == "en-GB" ? 1 : 0;
      strong += type_of(element) == "/Strong" ? 1 : 0;
    }
    CHECK(english == 1);
    CHECK(strong == 1);
  }
}
