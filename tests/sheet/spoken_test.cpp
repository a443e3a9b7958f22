#include "sheet/spoken.h"

#include <array>
#include <catch2/catch.hpp>
#include <regex>

#include "base/said_in.h"
#include "output/tool.h"
#include "page/shaped_line.h"
#include "sheet/desk.h"
#include "sheet/pieces.h"

// What a listener hears of a page that nobody sees there.

namespace furnish::test {
namespace {
constexpr std::array languages{"es", "ar"};

/// Pages for the staff of a salon that writes English, in another language; the day and one pet.
std::vector<Frame> pages_in(const std::string& language, const std::string& pet) {
  Desk table(sample("lantern-street"));
  table.speak(language);
  const Kennel kennel = table.kennel(pet);
  std::vector<Frame> out;
  for (const auto& sheet : {table.card(kennel), table.style(kennel), table.day()}) {
    REQUIRE(sheet);
    for (Frame& side : sides(sheet->page)) out.push_back(std::move(side));
  }
  return out;
}
}  // namespace

TEST_CASE("what the salon wrote is read aloud in its own language (ISO 14289-1, 7.2)", "[spoken]") {
  // Words that no other of these languages has.
  const std::regex english("\\b(the|with|and|when|from)\\b");
  for (const std::string language : languages) {
    std::size_t marked = 0;
    for (const Frame& page : pages_in(language, "marlow")) {
      for (const Mark& mark : page.marks) {
        const auto* const text = std::get_if<TextMark>(&mark);
        if (text == nullptr) continue;
        for (const ShapedRun& run : text->line->runs()) {
          const std::string own = text->line->text().substr(run.begin, run.end - run.begin);
          marked += run.language == "en-GB" ? 1 : 0;
          INFO(language << ": " << own);
          CHECK((!run.language.empty() || !std::regex_search(own, english)));
        }
      }
    }
    CHECK(marked > 40);
  }
}

TEST_CASE("names and the page's own words are in the page's language", "[spoken]") {
  for (const Frame& page : pages_in("es", "marlow")) {
    for (const Mark& mark : page.marks) {
      const auto* const text = std::get_if<TextMark>(&mark);
      if (text == nullptr) continue;
      for (const ShapedRun& run : text->line->runs()) {
        const std::string own = text->line->text().substr(run.begin, run.end - run.begin);
        INFO(own);
        if (run.language.empty()) continue;
        CHECK(own.find("Priya") == std::string::npos);
        CHECK(own.find("Corvej\u00F3n") == std::string::npos);
      }
    }
  }
}

TEST_CASE("a text that is cut goes on in its language", "[spoken]") {
  std::string words;
  for (int i = 0; i < 80; ++i) words += "hold still ";
  const std::vector<std::string> cut = cut_text("Ojo: " + said_in("en", words + "now") + " y ya");
  REQUIRE(cut.size() > 2);
  std::string all;
  for (const std::string& piece : cut) {
    CHECK(piece.find(language_begins) != std::string::npos);
    CHECK(piece.find(language_ends) != std::string::npos);
    all += (all.empty() ? "" : " ") + without_languages(piece);
  }
  CHECK(all == "Ojo: " + words + "now y ya");
}

TEST_CASE("boxes, lines and diamonds are said in the page's language (WCAG 2.2, 1.1.1)",
          "[spoken]") {
  for (const auto& [language, box, line] :
       {std::tuple{"en", "box to tick", "line to write on"},
        std::tuple{"es", "casilla para marcar", "l\u00EDnea para escribir"}}) {
    std::size_t boxes = 0, lines = 0, signs = 0;
    for (const Frame& page : pages_in(language, "marlow")) {
      for (const Mark& mark : page.marks) {
        const auto* const tag = std::get_if<OpenTag>(&mark);
        if (tag == nullptr) continue;
        CHECK(without_languages(tag->alt) == tag->alt);
        boxes += tag->role == Structure::tick && tag->alt == box ? 1 : 0;
        lines += tag->role == Structure::form && tag->alt == line ? 1 : 0;
        if (tag->role == Structure::sign) {
          ++signs;
          CHECK_FALSE(tag->alt.empty());
        }
      }
    }
    CHECK(boxes >= 9);
    CHECK(lines >= 1);
    CHECK(signs >= 3);
  }
}

TEST_CASE("a card has headings to go to, and its table rows heads", "[spoken]") {
  std::size_t headings = 0, heads = 0, cells = 0;
  for (const Frame& page : pages_in("en", "marlow")) {
    for (const Mark& mark : page.marks) {
      const auto* const tag = std::get_if<OpenTag>(&mark);
      if (tag == nullptr) continue;
      headings += tag->role == Structure::heading ? 1 : 0;
      heads += tag->role == Structure::header_cell ? 1 : 0;
      cells += tag->role == Structure::cell ? 1 : 0;
    }
  }
  CHECK(headings >= 8);
  CHECK(heads > 3);
  CHECK(cells > heads);
}
}  // namespace furnish::test
