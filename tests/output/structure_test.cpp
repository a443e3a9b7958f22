#include "output/structure.h"

#include <catch2/catch.hpp>

#include "output/sample_page.h"

using namespace furnish;
using namespace furnish::test;

namespace {
/// "P(t)": each element with what it holds; t is text, s a stroke, a dot the end of its name.
std::string outline(const std::vector<Part>& parts) {
  std::string out;
  for (const Part& part : parts) {
    if (part.mark != nullptr) {
      out += std::holds_alternative<TextMark>(*part.mark) ? "t" : "s";
    } else {
      if (!out.empty()) out += ' ';
      out += std::string(pdf_name(part.element->tag)) + "(" + outline(part.element->parts) + ")";
    }
  }
  return out;
}

/// Marks from a picture: words open, ")" closes, t and s are marks, k a link.
class Drawing {
 public:
  Drawing& open(Structure role) {
    frame_.marks.emplace_back(OpenTag{role, "x", {}});
    return *this;
  }
  Drawing& close() {
    frame_.marks.emplace_back(CloseTag{});
    return *this;
  }
  Drawing& text() {
    frame_.marks.emplace_back(TextMark{});
    return *this;
  }
  Drawing& stroke() {
    frame_.marks.emplace_back(StrokeMark{{}, {}, 1_mm, Ink::text, Dash::solid});
    return *this;
  }
  Drawing& link() {
    frame_.marks.emplace_back(LinkMark{{}, "x", "x"});
    return *this;
  }
  std::string outline() const { return ::outline(structure_of(frame_)); }

 private:
  Frame frame_{{100_mm, 100_mm}, {}};
};
}  // namespace

TEST_CASE("Text and drawing in one tag stay together") {
  CHECK(Drawing().open(Structure::paragraph).stroke().text().close().outline() == "P(st)");
  CHECK(Drawing().open(Structure::figure).stroke().text().close().outline() == "Figure(st)");
  CHECK(Drawing().open(Structure::cell).close().outline() == "TD()");
}

TEST_CASE("Text beside tags gets tags of its own, drawing stays decoration") {
  CHECK(
      Drawing().open(Structure::paragraph).text().link().text().text().stroke().close().outline() ==
      "P(Span(t) Link() Span(tt)s)");
  CHECK(Drawing().open(Structure::section).text().stroke().close().outline() == "Sect(P(t)s)");
  CHECK(Drawing()
            .open(Structure::cell)
            .text()
            .open(Structure::paragraph)
            .text()
            .close()
            .close()
            .outline() == "TD(P(t) P(t))");
  CHECK(Drawing().open(Structure::figure).stroke().text().link().stroke().close().outline() ==
        "Figure(Span(st) Link() Span(s))");
}

TEST_CASE("Groups that hold only decoration vanish") {
  CHECK(Drawing().open(Structure::section).stroke().close().outline() == "s");
  CHECK(
      Drawing().open(Structure::document).open(Structure::list).close().close().outline().empty());
}

TEST_CASE("Labels are what their place makes of them") {
  CHECK(Drawing()
            .open(Structure::item)
            .open(Structure::label)
            .text()
            .close()
            .stroke()
            .text()
            .close()
            .outline() == "LI(Lbl(t) LBody(st))");
  CHECK(Drawing().open(Structure::item).text().link().close().outline() ==
        "LI(LBody(P(t) Link()))");
  CHECK(Drawing()
            .open(Structure::paragraph)
            .open(Structure::label)
            .text()
            .close()
            .text()
            .close()
            .outline() == "P(Span(t) Span(t))");
  CHECK(
      Drawing().open(Structure::section).open(Structure::label).text().close().close().outline() ==
      "Sect(P(t))");
}

TEST_CASE("Headings begin at the first level") {
  CHECK(Drawing().open(Structure::heading).text().close().outline() == "H1(t)");
  CHECK(Drawing()
            .open(Structure::title)
            .text()
            .close()
            .open(Structure::heading)
            .text()
            .close()
            .outline() == "H1(t) H2(t)");
}

TEST_CASE("A box to tick is the label of its item, and a link holds the words that it lies on") {
  CHECK(Drawing()
            .open(Structure::item)
            .open(Structure::tick)
            .stroke()
            .close()
            .text()
            .close()
            .outline() == "LI(Lbl(Form(s)) LBody(t))");
  CHECK(Drawing()
            .open(Structure::item)
            .open(Structure::tick)
            .stroke()
            .close()
            .open(Structure::label)
            .text()
            .close()
            .text()
            .close()
            .outline() == "LI(Lbl(Form(s) Span(t)) LBody(t))");
  CHECK(Drawing().open(Structure::link).link().text().close().outline() == "Link(t)");
  CHECK(Drawing()
            .open(Structure::figure)
            .stroke()
            .open(Structure::caption)
            .text()
            .close()
            .close()
            .outline() == "Figure(Span(s) Caption(t))");
}
