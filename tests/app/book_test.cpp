#include <fmt/format.h>
#include <catch2/catch.hpp>

#include <filesystem>
#include <map>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>

#include "app/program.h"
#include "app/words_on_page.h"
#include "output/pdf_rules.h"
#include "sheet/desk.h"

// A salon's book, as a file: read by libqpdf and by poppler's tools.

namespace furnish::test {
namespace {
using Json = nlohmann::json;

std::string book(const std::string& salon, const std::string& more) {
  return "book --on 2026-11-24 --salon " + test::quoted(salon) + " " + more;
}

/// What libqpdf's program says of a file's objects.
Json qpdf_json(const std::string& pdf, const std::string& keys) {
  return Json::parse(run("qpdf --json=2 " + keys + " " + pdf).out);
}

/// Pages before the body, which begins with the label "1".
std::size_t front_pages(const std::string& pdf) {
  const Json all = qpdf_json(pdf, "--json-key=pagelabels");
  for (const Json& label : all["pagelabels"]) {
    const Json& says = label["label"];
    if (says["/S"] == "/D") return label["index"].get<std::size_t>();
  }
  return 0;
}

std::string text_of_page(const std::string& pdf, std::size_t page) {
  return run(fmt::format("pdftotext -raw -f {0} -l {0} {1} -", page, pdf)).out;
}

struct Line {
  std::string title;
  std::size_t page = 0, depth = 0;
};
void read_outline(const Json& entries, std::size_t depth, std::vector<Line>& out) {
  for (const Json& entry : entries) {
    out.push_back({entry["title"], entry["destpageposfrom1"].get<std::size_t>(), depth});
    read_outline(entry["kids"], depth + 1, out);
  }
}

/// The book of some of the demo's pets, in four scripts, made once.
const std::string& demo_book() {
  static const TemporaryFolder folder;
  static const std::string made = [] {
    copy_sample("lantern-street", folder.path("salon"));
    const std::set<std::string> kept{"agnes", "gao", "komugi", "marlow", "qamar"};
    for (const auto& file : std::filesystem::directory_iterator(folder.path("salon/pets"))) {
      if (!kept.contains(file.path().stem().string())) std::filesystem::remove(file.path());
    }
    std::string pdf = folder.path("book.pdf");
    const auto ran = furnish(book(folder.path("salon"), "-o " + pdf));
    INFO(ran.err);
    REQUIRE(ran.status == 0);
    CHECK(ran.out == pdf + "\n");
    return pdf;
  }();
  return made;
}

/// A small salon: two letters, one of two owners' pets, one with a visit.
void put_salon(const TemporaryFolder& folder) {
  put(folder, "salon.toml", "[salon]\nname = \"S\"\nlanguage = \"en-GB\"\n");
  put(folder, "pets/rex.toml",
      "[pet]\nname = \"Rex\"\ncoat = \"smooth\"\n[owner]\nname = \"A. Bo\"\n");
  put(folder, "pets/ada.toml", "[pet]\nname = \"Ada\"\ncoat = \"smooth\"\n");
  put(folder, "visits/rex/2026-10-01.toml", "date = 2026-10-01\nminutes = 90\n");
}
}  // namespace

TEST_CASE("a book of the demo's pets is a good PDF whose fonts stand in it once", "[book]") {
  const std::string& pdf = demo_book();
  const std::string bytes = bytes_of(pdf);
  CHECK(pdf_faults(bytes) == std::vector<std::string>{});
  CHECK(run("qpdf --check " + pdf).status == 0);
  std::set<std::string> fonts;
  const Json all = qpdf_json(pdf, "--json-key=qpdf");
  for (const auto& [name, object] : all["qpdf"][1].items()) {
    if (!object.contains("value") || !object["value"].is_object()) continue;
    const Json& value = object["value"];
    if (value.value("/Type", "") != "/FontDescriptor") continue;
    // Of one face cairo makes two: its Latin letters, and all else.
    const std::string font = value["/FontName"].get<std::string>().substr(8);
    INFO(font);
    CHECK(fonts.insert(font + std::to_string(value["/Flags"].get<int>())).second);
  }
  CHECK(fonts.size() >= 3);
  for (const PlacedPage& page : placed_pages(run("pdftotext -bbox-layout " + pdf + " -").out)) {
    CHECK(misplaced(page, 0) == std::vector<std::string>{});
  }
}

TEST_CASE("a book's outline, index and links lead to each pet's pages, as two readers see it",
          "[book]") {
  const std::string& pdf = demo_book();
  const std::size_t front = front_pages(pdf);
  CHECK(front % 2 == 0);
  REQUIRE(front > 0);

  std::vector<Line> outline;
  const Json all = qpdf_json(pdf, "--json-key=outlines");
  read_outline(all["outlines"], 0, outline);
  std::map<std::string, std::size_t> page_of;
  std::string letter, pet;
  std::size_t pets = 0;
  for (const Line& line : outline) {
    INFO(line.title);
    CHECK(line.page > front);
    CHECK(line.page % 2 == 1);  // on paper of its own
    if (line.depth == 0) letter = line.title;
    if (line.depth == 1) {
      ++pets;
      pet = line.title;
      page_of[pet] = line.page - front;
      if (static_cast<unsigned char>(pet[0]) < 0x80) CHECK(pet.substr(0, 1) == letter);
    }
    if (line.depth == 2) {
      CHECK(has(line.title, pet));
      CHECK(has(without_space(text_of_page(pdf, line.page)), without_space(pet)));
    }
  }
  CHECK(pets == 5);

  // The index says the same number, and links there; by poppler.
  std::string index;
  for (std::size_t i = 1; i <= front; ++i) index += text_of_page(pdf, i);
  const std::string xml = run("pdftohtml -xml -i -stdout " + pdf).out;
  for (const char* name : {"Agnes", "Marlow"}) {
    INFO(name);
    const std::size_t page = page_of.at(name);
    CHECK(std::regex_search(index, std::regex(fmt::format("{}[^\n]*\n?{}\n", name, page))));
    CHECK(std::regex_search(
        xml, std::regex(fmt::format("<a href=\"[^\"]*#{}\">[^\n]*{}", page + front, name))));
    CHECK(std::regex_search(
        xml, std::regex(fmt::format("<item page=\"{}\">{}</item>", page + front, name))));
  }
}

TEST_CASE("a book carries what it was made from, and each pet's file comes out of it", "[book]") {
  const TemporaryFolder folder;
  put_salon(folder);
  const std::string pdf = folder.path("book.pdf");
  REQUIRE(furnish(book(folder.path(""), "-o " + pdf)).status == 0);
  const std::string list = run("pdfdetach -list " + pdf).out;
  for (const char* file : {"rex.toml", "ada.toml", "rex-2026-10-01.toml"}) {
    INFO(file);
    CHECK(has(list, file));
  }
  CHECK(has(list, "3 embedded files"));
  const auto unpacked = furnish("unpack " + pdf + " --pet rex");
  CHECK(unpacked.status == 0);
  CHECK(has(unpacked.out, "name = \"Rex\""));
  CHECK(has(unpacked.out, "A. Bo"));
}

TEST_CASE("a pet that cannot be read is missing from the book, and its index says why", "[book]") {
  const TemporaryFolder folder;
  put_salon(folder);
  put(folder, "pets/bad.toml", "[pet]\nname = \"Bad\"\ncoat = \"fluffy\"\n");
  put(folder, "visits/ada/2026-09-01.toml", "date = 2026-09-01\nminutes = \"x\"\n");
  const std::string pdf = folder.path("book.pdf");
  const auto ran = furnish(book(folder.path(""), "-o " + pdf));
  CHECK(ran.status == 1);
  CHECK(has(ran.err, "pets/bad.toml:3:8: error"));
  CHECK(has(ran.err, "1 of 3; 2 with faults"));
  CHECK(pdf_faults(bytes_of(pdf)) == std::vector<std::string>{});
  const std::string index = without_space(text_of_page(pdf, 1));
  INFO(index);
  CHECK(has(index, "3pets,1missing"));
  CHECK(has(index, "badMissing,afilehasfaults:pets/bad.toml:3"));
  CHECK(has(index, "Nonote,avisit\u2019sfilehasfaults:visits/ada/2026-09-01.toml:2"));
  CHECK(has(index, "Rex,A.Bo"));
}

TEST_CASE("a book is the same bytes each time, takes an older one's place, and no person's file",
          "[book]") {
  const TemporaryFolder folder;
  put_salon(folder);
  REQUIRE(furnish(book(folder.path(""), "")).status == 0);
  const std::string first = bytes_of(folder.path("sheets/book.pdf"));
  REQUIRE(furnish(book(folder.path(""), "")).status == 0);
  CHECK(bytes_of(folder.path("sheets/book.pdf")) == first);
  REQUIRE(furnish(book(folder.path(""), "-o - > " + folder.path("out.pdf"))).status == 0);
  CHECK(bytes_of(folder.path("out.pdf")) == first);
  put(folder, "sheets/book.pdf", first + " ");
  const auto refused = furnish(book(folder.path(""), ""));
  CHECK(refused.status == 1);
  CHECK(has(refused.err, "no sheet that furnish wrote"));
  CHECK(bytes_of(folder.path("sheets/book.pdf")) == first + " ");
  CHECK(furnish(book(folder.path(""), "-o book.png")).status == 2);
  CHECK(furnish(book(folder.path(""), "-o x.toml")).status == 2);
}

TEST_CASE("a book in every language is a good PDF", "[book]") {
  const TemporaryFolder folder;
  put_salon(folder);
  for (const char* language : {"en-US", "es", "fr", "de", "pt", "vi", "ar"}) {
    INFO(language);
    const std::string pdf = folder.path(std::string(language) + ".pdf");
    const auto ran =
        furnish(book(folder.path(""), "--language " + std::string(language) + " -o " + pdf));
    INFO(ran.err);
    CHECK(ran.status == 0);
    const std::string bytes = bytes_of(pdf);
    CHECK(pdf_faults(bytes) == std::vector<std::string>{});
    const PdfFile file(bytes);
    CHECK(file.root().getKey("/Lang").getUTF8Value() == language);
    for (QPDFObjectHandle element : file.elements()) {
      if (type_of(element) != "/Part" || !element.hasKey("/Lang")) continue;
      CHECK(element.getKey("/Lang").getUTF8Value() == language);
    }
  }
}
}  // namespace furnish::test
