#include <catch2/catch.hpp>

#include <cmath>
#include <filesystem>

#include "app/program.h"
#include "app/promised.h"
#include "app/words_on_page.h"
#include "output/pdf_rules.h"

namespace furnish::test {
namespace {
namespace fs = std::filesystem;

/// ISO 216:2007 in millimetres; letter ANSI/ASME Y14.1, the rest by their inches; as points of 1/72
/// inch. Written out here, so that the program's own table is not its own witness. `known` is what
/// libpaper calls it, if it knows it; `rules`: cards of it are held to PDF/UA-1 and PDF/A-3A.
struct KnownPaper {
  const char* name;
  double width, height;
  const char* known;
  bool rules = false;
};
constexpr double mm = 72 / 25.4;
constexpr KnownPaper known_papers_of_the_world[] = {
    {"A4", 210 * mm, 297 * mm, "a4"},
    {"A5", 148 * mm, 210 * mm, "a5", true},
    {"A6", 105 * mm, 148 * mm, "a6", true},
    {"letter", 8.5 * 72, 11 * 72, "letter", true},
    {"half letter", 5.5 * 72, 8.5 * 72, "halfletter"},
    {"5x8 in", 5 * 72, 8 * 72, nullptr},
    {"4x6 in", 4 * 72, 6 * 72, nullptr},
};

/// All cards of a salon on one paper, as one file; a page a pet.
struct Batch {
  TemporaryFolder folder;
  std::string pdf = folder.path("all.pdf");
  ToolOutput ran;
  Batch(const std::string& salon, const std::string& paper)
      : ran(furnish("card --together --salon " + sample(salon) + " --on " + std::string(demo_date) +
                    " --paper " + test::quoted(paper) + " -o " + pdf)) {
    INFO(ran.err);
    REQUIRE(ran.status == 0);
  }
};

std::vector<std::string> pages_of(const std::string& text) {
  std::vector<std::string> out(1);
  for (const char c : text) {
    if (c == '\f') {
      out.emplace_back();
    } else {
      out.back() += c;
    }
  }
  out.pop_back();  // poppler ends each page with a form feed
  return out;
}
/// All but the largest papers may be turned over; then each pet has two pages, the second often
/// blank, and the last of all pets none that is blank.
bool may_turn_over(const KnownPaper& paper) {
  return paper.width < 150 * mm;
}

/// A page a pet, or two, each of the paper's size.
void check_sizes(const PdfFile& file, const KnownPaper& paper, std::size_t pets) {
  const std::size_t pages = file.pages().size();
  const std::size_t turned = 2 * pets;
  // On small paper the fullest card of a sample (Juniper's) has a leaf more for its boxes.
  const bool one_more = may_turn_over(paper) && (pages == turned + 1 || pages == turned + 2);
  CHECK((pages == pets || one_more ||
         (may_turn_over(paper) && (pages == turned || pages == turned - 1))));
  for (QPDFObjectHandle page : file.pages()) {
    auto box = items_of(page.getKey("/MediaBox"));
    REQUIRE(box.size() == 4);
    CHECK(box[0].getNumericValue() == 0);
    CHECK(box[1].getNumericValue() == 0);
    CHECK(std::abs(box[2].getNumericValue() - paper.width) < 0.1);
    CHECK(std::abs(box[3].getNumericValue() - paper.height) < 0.1);
  }
}

/// All fonts are in the file, in part and with what their glyphs mean, as another reader has it.
void check_fonts(const std::string& pdf) {
  // "name type encoding emb sub uni object ID", below two lines of heading.
  std::size_t fonts = 0;
  for (const std::string& line :
       matches(run("pdffonts " + pdf).out, "\n([A-Z]{6}\\+[^\n]*|[^-\n][^\n]*)")) {
    INFO(line);
    const auto words = words_of(line);
    REQUIRE(words.size() >= 6);
    CHECK(words[words.size() - 5] == "yes");
    CHECK(words[words.size() - 4] == "yes");
    CHECK(words[words.size() - 3] == "yes");
    ++fonts;
  }
  CHECK(fonts >= 3);
}

/// Every promised value can be read off the file, in reading order; on a card that goes on over the
/// other side, off one of its sides.
void check_promises(const std::string& pdf, const std::vector<Kennel>& kennels) {
  // In the order of the file's content, which is the reading order of its tags.
  const auto pages = pages_of(run("pdftotext -raw " + pdf + " -").out);
  // What goes on begins with the name of the sheet; a side that keeps two cards apart is empty.
  std::vector<std::pair<std::string, std::string>> cards;
  for (const std::string& page : pages) {
    if (words_of(page).empty()) continue;
    const std::string first = page.substr(0, page.find('\n'));
    if (!first.ends_with(": kennel card")) {
      cards.emplace_back(page, "");
    } else {
      REQUIRE_FALSE(cards.empty());
      cards.back().second += page;
    }
  }
  REQUIRE(cards.size() == kennels.size());
  for (std::size_t i = 0; i < kennels.size(); ++i) {
    const auto& [front, back] = cards[i];
    INFO(kennels[i].pet.key << ":\n" << front << back);
    const auto missing = [&](bool brief) {
      const std::vector<std::string> all = promised(kennels[i], brief);
      return words_of(back).empty() ? first_missing(front, all) : first_lost(front + back, all);
    };
    // A crowded card says of the finish what differs, and the style's name for the rest.
    const bool brief = !missing(false).empty() && kennels[i].pet.style &&
                       std::ranges::count(kennels[i].pet.finish, false, &FinishLine::differs) > 0;
    CHECK(missing(brief) == "");
  }
}

/// No word is off the page, where the clip is, or over another.
void check_places(const std::string& pdf, const KnownPaper& paper) {
  const auto pages = placed_pages(run("pdftotext -bbox-layout " + pdf + " -").out);
  REQUIRE_FALSE(pages.empty());
  const double clip = (paper.width < 115 * mm ? 12 : 14) * mm;
  for (const PlacedPage& page : pages) {
    const bool blank_back = may_turn_over(paper) && page.words.empty();
    CHECK((blank_back || page.words.size() > 10));
    CHECK(misplaced(page, clip) == std::vector<std::string>{});
  }
}

/// All that is asked of a salon's cards on every paper; each file is made once for it.
void check_cards(const std::string& salon) {
  Desk table(sample(salon));
  std::vector<Kennel> kennels;
  for (const std::string& key : table.pets()) kennels.push_back(table.kennel(key));
  for (const KnownPaper& paper : known_papers_of_the_world) {
    INFO(salon << " on " << paper.name);
    const Batch batch(salon, paper.name);
    const std::string bytes = bytes_of(batch.pdf);
    check_sizes(PdfFile(bytes), paper, kennels.size());
    check_fonts(batch.pdf);
    const ToolOutput check = run("qpdf --check " + batch.pdf);
    CHECK(check.status == 0);
    CHECK(check.err == "");
    if (paper.rules) CHECK(pdf_faults(bytes) == std::vector<std::string>{});
    check_promises(batch.pdf, kennels);
    check_places(batch.pdf, paper);
  }
}
}  // namespace

TEST_CASE("sizes of paper are those that libpaper knows", "[pages]") {
  for (const KnownPaper& paper : known_papers_of_the_world) {
    if (paper.known == nullptr) continue;
    const auto said = words_of(run("paperconf -s -p " + std::string(paper.known)).out);
    INFO(paper.name);
    REQUIRE(said.size() == 2);
    CHECK(std::abs(std::stod(said[0]) - paper.width) < 0.1);
    CHECK(std::abs(std::stod(said[1]) - paper.height) < 0.1);
  }
}

TEST_CASE("every card of the demo salon is on its paper and keeps its promises", "[pages]") {
  check_cards("lantern-street");
}

TEST_CASE("every card of the salon of the other units is one page that keeps its promises",
          "[pages]") {
  check_cards("us-corner");
}

TEST_CASE("a card by itself is one page, or two, that keep to the rules", "[pages]") {
  const TemporaryFolder folder;
  const auto ran = furnish("card --salon " + sample("lantern-street") + " --on " +
                           std::string(demo_date) + " -o " + folder.path("") + "/");
  INFO(ran.err);
  REQUIRE(ran.status == 0);
  const auto files = files_below(folder.path(""));
  CHECK(files.size() == Desk(sample("lantern-street")).pets().size());
  for (const std::string& name : files) {
    INFO(name);
    const std::string bytes = bytes_of(folder.path(name));
    CHECK(PdfFile(bytes).pages().size() <= 2);
    CHECK(pdf_faults(bytes) == std::vector<std::string>{});
  }
}

TEST_CASE("what finds misplaced words finds them", "[pages]") {
  // Two lines of 10 points at a leading of 1.2 are not over each other, though their boxes meet.
  const PlacedPage page{100,
                        100,
                        {{"a", 10, 20, 30, 34},
                         {"b", 10, 32, 30, 46},
                         {"c", 29, 22, 50, 36},
                         {"d", 95, 50, 101, 64},
                         {"e", 60, 5, 70, 19}}};
  CHECK(misplaced(page, 12) ==
        std::vector<std::string>{"c: over a", "d: off the page", "e: where the clip is"});
}
}  // namespace furnish::test
