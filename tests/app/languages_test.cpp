#include <catch2/catch.hpp>
#include <set>

#include "app/program.h"
#include "output/pdf_rules.h"
#include "sheet/desk.h"

namespace furnish::test {
namespace {
const std::string in_lantern =
    " --salon " + sample("lantern-street") + " --on " + std::string(demo_date) + " ";

/// The page as marks.
ToolOutput page(const std::string& arguments) {
  return furnish(arguments + in_lantern + "--format text -o -");
}
}  // namespace

TEST_CASE("what --language and --units ask for goes before the salon's and the reader's",
          "[languages]") {
  CHECK(has(page("card marlow").out, "WARNING"));
  const auto spanish = page("card marlow --language es");
  CHECK(spanish.status == 0);
  CHECK(has(spanish.out, "ADVERTENCIA"));
  CHECK(has(spanish.out, "4,6\u202Fkg"));
  // A language that names a region brings the units of the region (CLDR, supplemental data:
  // measurementSystem US).
  CHECK(has(page("card marlow --language es-US").out, "\u202Flb"));
  CHECK(has(page("card marlow --language es-MX").out, "\u202Fkg"));
  CHECK(has(page("card marlow --language es-US --units metric").out, "\u202Fkg"));
  CHECK(has(page("card marlow --units us").out, "\u202Flb"));
}

TEST_CASE("pages for the owner are in the owner's language, the salon's own are not",
          "[languages]") {
  const auto care = page("care marlow"), owner = page("note marlow --for owner"),
             file = page("note marlow"), english = page("care marlow --language en");
  for (const auto* const one : {&care, &owner, &file, &english}) {
    INFO(one->err);
    CHECK(one->status == 0);
  }
  CHECK(has(care.out, "En casa"));
  CHECK(has(owner.out, "Antes"));
  CHECK(has(file.out, "Before"));
  CHECK(has(english.out, "At home"));
}

namespace {
/// What an element says of its language; the document's if it says nothing.
std::string language_of(QPDFObjectHandle element, QPDFObjectHandle root) {
  return (element.hasKey("/Lang") ? element : root).getKey("/Lang").getUTF8Value();
}
}  // namespace

// ISO 14289-1, 7.2.
TEST_CASE("each page of a file in several languages says which it is in", "[languages]") {
  const TemporaryFolder folder;
  const std::string pets = "care juniper marlow moth nefeli pip qamar sol";
  REQUIRE(furnish(pets + in_lantern + "-o " + folder.path("each") + "/").status == 0);
  REQUIRE(furnish(pets + in_lantern + "--together -o " + folder.path("all.pdf")).status == 0);
  std::vector<std::string> alone, together;
  for (const std::string& name : files_below(folder.path("each"))) {
    if (!name.ends_with(".pdf")) continue;
    const PdfFile file(bytes_of(folder.path("each/" + name)));
    alone.push_back(language_of(file.root(), file.root()));
  }
  const PdfFile all(bytes_of(folder.path("all.pdf")));
  for (QPDFObjectHandle page : elements_below(all.elements().front())) {
    together.push_back(language_of(page, all.root()));
  }
  CHECK(together == alone);
  CHECK(std::set<std::string>(alone.begin(), alone.end()).size() >= 4);
}

TEST_CASE(
    "a language without words is an error where it was asked for, a warning where an owner "
    "speaks it",
    "[languages]") {
  const auto asked = page("card marlow --language fi");
  CHECK(asked.status == 1);
  CHECK(asked.out == "");
  CHECK(has(asked.err, "there are no words for the language 'fi'"));
  CHECK(has(asked.err, "there are ar, de, en, es, fr, pt and vi"));
  const auto speaks = page("care komugi");
  CHECK(speaks.status == 0);
  CHECK(has(speaks.err, "warning: there are no words for the language 'ja'"));
  CHECK(has(speaks.out, "At home"));
  for (const char* wrong : {"card marlow --language Spanish", "card marlow --language es_MX",
                            "card marlow --units miles", "check --language es"}) {
    INFO(wrong);
    CHECK(furnish(wrong + in_lantern).status == 2);
  }
}

TEST_CASE("a salon says texts otherwise, adds a language, and hears of its faults", "[languages]") {
  const TemporaryFolder folder;
  put(folder, "pets/rex.toml", "[pet]\nname = \"Rex\"\n[trim]\nstyle = \"natural-tidy\"\n");
  put(folder, "salon.toml", "[salon]\nlanguage = \"nl\"\n");
  const std::string salon = " --salon " + folder.path("") + " --on 2026-11-24 ";
  const auto run_card = [&] { return furnish("card rex" + salon + "--format text -o -"); };

  const auto none = run_card();
  CHECK(none.status == 0);
  CHECK(has(none.err, "warning: there are no words for the language 'nl'; the sheet is in 'en'"));
  CHECK(furnish("card rex --strict" + salon + "-o -").status == 1);

  put(folder, "styles/words/nl.toml",
      "[sheet]\nlabel-trim = \"Trimmen\"\n[written]\n\"Natural tidy\" = \"Natuurlijk net\"\n");
  const auto dutch = run_card();
  CHECK(dutch.status == 0);
  CHECK(has(dutch.out, "Trimmen"));
  CHECK(has(dutch.out, "Natuurlijk net"));
  CHECK(has(dutch.err, "texts for 'nl' are missing and said in English"));

  put(folder, "styles/words/nl.toml", "[sheet]\nlabel-trim = \"Trimmen {0}\"\n");
  CHECK(run_card().status == 1);
  const auto checked = furnish("check" + salon);
  CHECK(checked.status == 1);
  CHECK(has(checked.err, "nl.toml:2:14: error: sheet.label-trim: has {0} where English has no"));
}
}  // namespace furnish::test
