#include <catch2/catch.hpp>

#include "app/program.h"
#include "app/words_on_page.h"
#include "output/pdf_rules.h"
#include "sheet/desk.h"

// The page for the wall, as a file.

namespace furnish::test {
namespace {
std::string rules(const std::string& salon, const std::string& more) {
  return "rules --salon " + salon + " --on " + std::string(demo_date) + " " + more;
}
}  // namespace

TEST_CASE("the page of rules is a good page on every paper of a wall", "[rules]") {
  for (const char* salon : {"lantern-street", "us-corner"}) {
    for (const char* paper : {"A3", "A4", "letter"}) {
      INFO(salon << " on " << paper);
      const TemporaryFolder folder;
      const std::string pdf = folder.path("rules.pdf");
      const auto ran =
          furnish(rules(sample(salon), "--paper " + std::string(paper) + " -o " + pdf));
      CHECK(ran.status == 0);
      CHECK(ran.err == "");
      CHECK(ran.out == pdf + "\n");
      const std::string bytes = bytes_of(pdf);
      CHECK(PdfFile(bytes).pages().size() == 1);
      CHECK(pdf_faults(bytes) == std::vector<std::string>{});
      CHECK(run("qpdf --check " + pdf).status == 0);
      const auto pages = placed_pages(run("pdftotext -bbox-layout " + pdf + " -").out);
      REQUIRE(pages.size() == 1);
      CHECK(misplaced(pages[0], 0) == std::vector<std::string>{});
    }
  }
}

TEST_CASE("the salon's rules are first, each as it is written in the reader's language",
          "[rules]") {
  const TemporaryFolder folder;
  put(folder, "salon.toml",
      "[salon]\nname = \"S\"\nlanguage = \"en\"\n"
      "rules = [\"one dog a table\", { en = \"ask first\", es = \"preguntar antes\" }]\n");
  const auto text = [&](const std::string& more) {
    const std::string pdf = folder.path("rules.pdf");
    REQUIRE(furnish(rules(folder.path(""), more + " -o " + pdf)).status == 0);
    return run("pdftotext -raw " + pdf + " -").out;
  };
  const std::string english = text("");
  CHECK(has(english, "1 One dog a table.\n2 Ask first.\n"));
  CHECK(english.find("Ask first.") < english.find("With every dog"));
  CHECK(has(without_space(english), "Localrulesandavet\u2019swordcomefirst."));
  CHECK(has(text("--language es"), "2 Preguntar antes.\n"));
}

TEST_CASE("rules without end go on over other sides, and none is lost", "[rules]") {
  const TemporaryFolder folder;
  std::string list;
  for (int i = 1; i <= 45; ++i) {
    list += "\"rule number " + std::to_string(i) + " is longer than most that hang on a wall\",\n";
  }
  put(folder, "salon.toml", "[salon]\nname = \"S\"\nrules = [\n" + list + "]\n");
  const std::string pdf = folder.path("rules.pdf");
  const auto ran = furnish(rules(folder.path(""), "-o " + pdf));
  INFO(ran.err);
  REQUIRE(ran.status == 0);
  const std::string bytes = bytes_of(pdf), text = run("pdftotext -raw " + pdf + " -").out;
  CHECK(PdfFile(bytes).pages().size() > 1);
  CHECK(pdf_faults(bytes) == std::vector<std::string>{});
  for (int i = 1; i <= 45; ++i) CHECK(has(text, "Rule number " + std::to_string(i) + " is"));
  CHECK(has(text, "With every dog"));
}

TEST_CASE("the page of rules goes where sheets go, and never over a person's file", "[rules]") {
  const TemporaryFolder folder;
  put(folder, "salon.toml", "[salon]\nname = \"S\"\n");
  const auto ran = furnish(rules(folder.path(""), ""));
  CHECK(ran.status == 0);
  CHECK(files_below(folder.path("")) == std::vector<std::string>{"salon.toml", "sheets/rules.pdf"});
  CHECK(furnish(rules(folder.path(""), "-o " + folder.path("salon.toml"))).status == 2);
  CHECK(furnish(rules(folder.path(""), "--paper A9")).status == 2);
  const auto png = furnish(rules(folder.path(""), "--format png -o -"));
  CHECK(png.out.starts_with("\x89PNG"));
}

TEST_CASE("a rule that is no text is an error with its place", "[rules]") {
  const TemporaryFolder folder;
  put(folder, "salon.toml", "[salon]\nrules = [3]\n");
  const auto ran = furnish(rules(folder.path(""), "-o -"));
  CHECK(ran.status == 1);
  CHECK(ran.out == "");
  CHECK(has(ran.err, "salon.toml:2:10: error"));
}
}  // namespace furnish::test
