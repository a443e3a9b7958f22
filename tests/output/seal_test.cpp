#include "output/seal.h"

#include <catch2/catch.hpp>
#include <filesystem>
#include <string>
#include <vector>

#include "output/icalendar.h"
#include "output/own_files.h"
#include "output/pdf.h"
#include "output/png.h"
#include "output/sample_page.h"
#include "output/svg.h"
#include "output/tool.h"

using namespace furnish;
using namespace furnish::test;

namespace {
/// Every byte that is not the seal's own counts: changed, gone, or one more.
void check_seal(const std::string& bytes) {
  CHECK(seal_holds(bytes));
  for (std::size_t i = 0; i < bytes.size(); i += bytes.size() / 50 + 1) {
    CAPTURE(i);
    std::string other = bytes;
    other[i] = static_cast<char>(other[i] ^ 1);
    CHECK_FALSE(seal_holds(other));
    CHECK_FALSE(seal_holds(bytes.substr(0, i)));
  }
  CHECK_FALSE(seal_holds(bytes + " "));
  CHECK_FALSE(seal_holds(" " + bytes));
}
}  // namespace

TEST_CASE("A sealed sheet is known again, and a changed one is not") {
  const TemporaryFolder folder;
  DiagnosticSink sink;
  Type type;
  const Frame page = sample_page(type);
  const DocumentInfo info = sample_info();
  SECTION("PDF, which another program still reads without a fault") {
    const auto pdf = to_pdf(std::vector{page}, info, {}, sink);
    REQUIRE(pdf);
    CHECK_FALSE(seal_holds(*pdf));
    const std::string bytes = sealed(*pdf, SealedAs::pdf);
    check_seal(bytes);
    const std::string path = folder.file("card.pdf", bytes);
    CHECK(run("qpdf --check " + path).status == 0);
  }
  SECTION("PNG, whose chunks another program counts right") {
    const auto png = to_png(page, info, 72, sink);
    REQUIRE(png);
    const std::string bytes = sealed(*png, SealedAs::png);
    check_seal(bytes);
    const std::string path = folder.file("card.png", bytes);
    CHECK(run("identify -regard-warnings " + path).status == 0);
  }
  SECTION("SVG") {
    const auto svg = to_svg(page, info, sink);
    REQUIRE(svg);
    const std::string bytes = sealed(*svg, SealedAs::svg);
    check_seal(bytes);
    const std::string path = folder.file("card.svg", bytes);
    CHECK(run("xmllint --noout " + path).status == 0);
  }
  SECTION("text") {
    check_seal(sealed("page 105.000 148.000\n", SealedAs::text));
  }
  SECTION("a calendar's entry") {
    CalendarEvent event;
    event.day = *parse_date("2026-11-24");
    event.uid = "rex@furnish";
    event.stamp = event.day;
    event.summary = "furnish-seal: is a strange name for a dog";
    check_seal(sealed(icalendar(event), SealedAs::calendar));
  }
}

TEST_CASE("In whatever stretches a file comes, its seal is found, and no word of seals hides it") {
  std::string text = "a page\n";
  for (int i = 0; i < 20; ++i) text += "furnish-seal:0000000g furnish-seal:00000000 furnish-se";
  const std::string bytes = sealed(text + "\n", SealedAs::text);
  for (const std::size_t stretch : {1U, 2U, 7U, 22U, 64U, 4096U}) {
    SealReader reader, other;
    for (std::size_t at = 0; at < bytes.size(); at += stretch) {
      const std::string one = bytes.substr(at, stretch);
      reader.take(one);
      other.take(at == 0 ? "b" + one.substr(1) : one);
    }
    CHECK(reader.holds());
    CHECK_FALSE(other.holds());
  }
}

TEST_CASE("A file that speaks of seals without end is not ours") {
  std::string text;
  for (std::size_t i = 0; i < SealReader::most_marks; ++i) text += "furnish-seal:00000000\n";
  CHECK_FALSE(seal_holds(sealed(text, SealedAs::text)));
}

TEST_CASE("A file larger than any of ours is not read through") {
  const TemporaryFolder folder;
  const std::string path = folder.file("film.mp4", sealed("a sheet", SealedAs::text));
  CHECK(is_own_file(path));
  std::filesystem::resize_file(path, largest_own_file + 1);  // with a hole
  CHECK_FALSE(is_own_file(path));
  CHECK_FALSE(is_own_file(folder.path("nothing")));
}
