#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "app/program.h"
#include "sheet/desk.h"

// What a slip on the command line is told.

namespace furnish::test {
namespace {
const std::string in_lantern =
    " --salon " + sample("lantern-street") + " --on " + std::string(demo_date) + " ";
}  // namespace

TEST_CASE("an unknown command is told the nearest, and help knows each", "[command-line]") {
  const auto ran = furnish("crad marlow");
  CHECK(ran.status == 2);
  CHECK(ran.err == "furnish: error: there is no command \"crad\"\n  hint: did you mean card?\n");
  CHECK(has(furnish("zzzzzz").err, "one of card, style"));
  CHECK(furnish("help card").out == furnish("card --help").out);
  CHECK(furnish("help").out == furnish("--help").out);
  CHECK(furnish("help card").status == 0);
  CHECK(furnish("help crad").status == 2);
}

TEST_CASE("each slip of a command line is said in whole words, with what to do", "[command-line]") {
  struct Slip {
    const char *arguments, *message, *hint;
  };
  // Messages as a person reads them: no braces, no names of types, one line and one hint.
  const Slip slips[] = {
      {"", "say what to do", "one of card, style"},
      {"new", "new what?", "one of visit, salon"},
      {"new vist marlow", "there is no command \"new vist\"", "did you mean new visit?"},
      {"help new vist", "there is no command \"new vist\"", "did you mean new visit?"},
      {"card pip --paper A44", "no paper 'A44'; one of A4, A5", "did you mean A4?"},
      {"card --format pfd", "expected one of pdf, png, svg, text", "did you mean pdf?"},
      {"card --formt pdf", "card has no option --formt", "did you mean --format?"},
      {"card --formt=pdf", "card has no option --formt", "did you mean --format?"},
      {"new visit pip --onn 2026-11-24", "new visit has no option --onn", "did you mean --on?"},
      {"--strict check", "no option --strict; options follow the command", "furnish help"},
      {"card --units uss", "expected one of metric, us", "did you mean us?"},
      {"note --for ownr", "expected one of owner, file", "did you mean owner?"},
      {"schema pets", "KIND: expected one of salon, pet", "did you mean pet?"},
      {"card --dpi 3", "a whole number from 10 to 1200, found \"3\"", "help card"},
      {"card --dpi 30x", "a whole number from 10 to 1200, found \"30x\"", "help card"},
      {"card --on tomorrow", "a day such as 2026-11-24, found \"tomorrow\"", "help card"},
      {"card --on 2026-11-31", "no calendar has a day 2026-11-31", "help card"},
      {"card --on", "--on needs a value: DAY", "help card"},
      {"card --on 2026-11-24 --on 2026-11-25", "--on may be given once", "help card"},
      {"card --strict=maybe", "--strict", "help card"},
      {"plan", "plan needs PET: files, or names", "help plan"},
      {"rename pip", "rename needs NEW: the new one", "help rename"},
      {"unpack a.pdf b.pdf", "unpack does not take \"b.pdf\"", "help unpack"},
      {"check --format jsno", "expected one of text, json", "did you mean json?"},
      {"card pip --booked", "--booked chooses the pets", "name none"},
      {"card pip -o pip.pfd", "\".pfd\" says not what to make", "--format"},
      {"day -o day.jpeg", "\".jpeg\" says not what to make", "--format"},
  };
  for (const auto& [arguments, message, hint] : slips) {
    const auto ran = furnish(arguments);
    INFO(arguments << "\n" << ran.err);
    CHECK(ran.status == 2);
    CHECK(ran.out == "");
    CHECK(ran.err.starts_with("furnish: error: "));
    const auto first = ran.err.find('\n');
    CHECK(has(ran.err.substr(0, first), message));
    CHECK(has(ran.err.substr(first), "\n  hint: "));
    CHECK(has(ran.err.substr(first), hint));
    CHECK(std::ranges::count(ran.err, '\n') == 2);
    for (const char* const inside : {"{", "TEXT", "->", "argument"}) {
      CHECK_FALSE(has(ran.err, inside));
    }
  }
}

TEST_CASE("help lists the words that an option takes", "[command-line]") {
  const std::string card = furnish("help card").out;
  for (const char* const words :
       {"--format pdf|png|svg|text", "--units metric|us", "--with-spec everyone|staff",
        "--paper A4|A5|A6|letter|half letter|5x8 in|4x6 in|A3", "--on DAY", "--salon FOLDER"}) {
    INFO(words);
    CHECK(has(card, words));
  }
  CHECK(has(furnish("help schema").out, "KIND salon|pet|style|day|visit|products"));
  CHECK(has(furnish("help note").out, "--for owner|file"));
  for (const char* const command : {"", "card", "check", "new visit", "due", "schema", "unpack"}) {
    const auto help = furnish("help " + std::string(command));
    CHECK(help.status == 0);
    CHECK_FALSE(has(help.out, "{"));
    CHECK_FALSE(has(help.out, "TEXT"));
  }
}

TEST_CASE("the option --strict holds for every command, and says which warning made the status",
          "[command-line]") {
  const TemporaryFolder folder;
  put(folder, "salon.toml", "[salon]\nclosed = [\"sunday\"]\n");
  put(folder, "pets/a.toml", "[pet]\nname = \"A\"\nborn = 2010-04-09\n");
  const std::string salon = " --on 2026-11-24 --salon " + folder.path("");
  for (const char* const command : {"check", "card a --format text -o -", "plan a"}) {
    INFO(command);
    const auto usual = furnish(command + salon);
    const auto strict = furnish(command + salon + " --strict");
    INFO(strict.err);
    CHECK(usual.status == 0);
    CHECK(strict.out == usual.out);
    // Only where there was one to tell.
    const bool warned = has(usual.err, "warning: ");
    CHECK(strict.status == (warned ? 1 : 0));
    CHECK(has(strict.err, "pets/a.toml:3:8: error: ") == warned);
    CHECK(has(strict.err, "(--strict)") == warned);
  }
  CHECK(has(furnish("check" + salon + " --strict").err, "(--strict): notice (senior)"));
  for (const char* const command :
       {"rules -o -", "day -o -", "day --week -o -", "due", "expiring", "find a", "rename a b",
        "new pet c", "new visit b", "note --format text", "care", "style", "unpack x.pdf"}) {
    INFO(command);
    CHECK(furnish(std::string(command) + " --strict" + salon).status < 2);
  }
}

TEST_CASE("plans of several pets are one list for a program, of one its object", "[command-line]") {
  const auto names = [](const std::string& arguments) {
    const auto ran = furnish("plan " + arguments + " --json" + in_lantern);
    std::string out;
    const auto json = nlohmann::json::parse(ran.out);
    for (const auto& one : json) out += one["pet"]["key"].get<std::string>() + " ";
    CHECK(json.is_array());
    return out + std::to_string(ran.status);
  };
  CHECK(names("pip dot") == "pip dot 0");
  // Also where only one of them could be planned.
  CHECK(names("pip nobody") == "pip 1");
  CHECK(nlohmann::json::parse(furnish("plan pip --json" + in_lantern).out).is_object());
}

TEST_CASE("of check --format json is --json", "[command-line]") {
  const std::string check = "check " + sample("lantern-street") + " --on 2026-11-24";
  const auto json = furnish(check + " --format json");
  CHECK(json.out == furnish(check + " --json").out);
  CHECK(json.out.starts_with("["));
  CHECK(furnish(check + " --format text").out == furnish(check).out);
}

TEST_CASE("a run of several says how many were done if not all were", "[command-line]") {
  const TemporaryFolder folder;
  put(folder, "salon.toml", "[salon]\nname = \"S\"\n");
  put(folder, "pets/a.toml", "[pet]\nname = \"A\"\n");
  put(folder, "pets/b.toml", "[pet]\nname = \"B\"\nbred = \"spitz\"\n");
  put(folder, "pets/c.toml", "[pet]\nname = \"C\"\n");
  const std::string card =
      "card --format text -o " + folder.path("out") + "/ --salon " + folder.path("");
  const auto ran = furnish(card);
  CHECK(ran.status == 1);
  CHECK(ran.err.ends_with("\n2 of 3; 1 with faults\n"));
  CHECK(ran.out == folder.path("out/a-card.txt") + "\n" + folder.path("out/c-card.txt") + "\n");
  // A pipe hears nothing where all went well.
  std::filesystem::remove(folder.path("pets/b.toml"));
  CHECK(furnish(card).err == "");
}

TEST_CASE("an output whose ending is no format is a wrong command line", "[command-line]") {
  const TemporaryFolder folder;
  for (const char* name : {"pip.jpg", "pip.pfd", "pip.docx"}) {
    INFO(name);
    const auto ran = furnish("card pip" + in_lantern + "-o " + folder.path(name));
    CHECK(ran.status == 2);
    CHECK(has(ran.err, ".pdf, .png, .svg or .txt"));
  }
  CHECK(files_below(folder.path("")).empty());
  CHECK(furnish("card pip --format png" + in_lantern + "-o " + folder.path("pip.x")).status == 0);
  CHECK(furnish("card pip" + in_lantern + "-o " + folder.path("pip.PNG")).status == 0);
  CHECK(bytes_of(folder.path("pip.PNG")).starts_with("\x89PNG"));
}
}  // namespace furnish::test
