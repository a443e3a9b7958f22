#include <catch2/catch.hpp>

#include <filesystem>
#include <nlohmann/json.hpp>

#include "app/program.h"
#include "app/small_salon.h"
#include "sheet/desk.h"

// What hurt the program once.

namespace furnish::test {
namespace {
namespace fs = std::filesystem;

struct OnlyAda : SmallSalon {
  OnlyAda()
      : SmallSalon{{"salon.toml", "[salon]\nname = \"S\"\n"},
                   {"pets/a.toml", "[pet]\nname = \"Ada\"\n"}} {}
};
}  // namespace

TEST_CASE("a language that says which digits or calendar it wants stops its own pet", "[hurt]") {
  const OnlyAda salon;
  put(salon.folder, "pets/b.toml", "[pet]\nname = \"Bo\"\n[owner]\nlanguage = \"en-u-nu\"\n");
  put(salon.folder, "pets/c.toml", "[pet]\nname = \"Cy\"\n[owner]\nlanguage = \"es\"\n");
  const auto check = salon.run("check");
  CHECK(check.status == 1);
  CHECK(has(check.err, "pets/b.toml:4:12: error: 'en-u-nu' says more than a language"));
  CHECK(has(check.err, "\"en\""));
  const auto care = salon.run("care");
  INFO(care.err);
  CHECK(care.status == 1);
  CHECK(care.out == "sheets/a-care.pdf\nsheets/c-care.pdf\n");
  CHECK(salon.run("care a --language ar-u-nu-arabext").status == 2);
}

TEST_CASE("a file's name that is no UTF-8 is no end of a list for programs", "[hurt]") {
  const OnlyAda salon;
  put(salon.folder, "pets/b\xFF.toml", "[pet]\nname = \"Bo\"\n");
  for (const std::string command :
       {"find bo --json", "due --json", "check --json", "plan pets/b\xFF.toml --json"}) {
    const auto ran = salon.run(command);
    INFO(command << ran.err << ran.out);
    CHECK(ran.status == 0);
    CHECK(nlohmann::json::accept(ran.out));
  }
}

TEST_CASE("a day that no file may have is refused before one has it", "[hurt]") {
  const OnlyAda salon;
  const auto before = files_below(salon.folder.path(""));
  CHECK(salon.run("new visit a --on 1985-01-01").status == 2);
  CHECK(salon.run("new visit a --on 2200-01-01").status == 2);
  const auto day = salon.run("new day 1985-01-01");
  CHECK(day.status != 0);
  CHECK(has(day.err, "from 1990-01-01 to 2199-12-31"));
  CHECK(files_below(salon.folder.path("")) == before);
  CHECK(salon.run("new visit a --on 2199-12-31").status == 0);
  CHECK(salon.run("new day 1990-01-01").status == 0);
  CHECK(salon.run("check").status == 0);
}

TEST_CASE("of a day that has all the visits it may no other is begun", "[hurt]") {
  const OnlyAda salon;
  put(salon.folder, "visits/a/2026-11-24.toml", "date = 2026-11-24\nunfinished = false\n");
  for (int i = 2; i < 99; ++i) {
    put(salon.folder, "visits/a/2026-11-24-" + std::to_string(i) + ".toml", "date = 2026-11-24\n");
  }
  CHECK(salon.run("new visit a --on 2026-11-24").status == 0);
  const auto more = salon.run("new visit a --on 2026-11-24");
  CHECK(more.status == 1);
  CHECK(has(more.err, "99 visits of 2026-11-24 already"));
  CHECK(salon.run("check").status == 0);
}

TEST_CASE("a visit is begun in the salon that one stands in, however the pet is named", "[hurt]") {
  const OnlyAda salon;
  const auto ran = salon.run("new visit pets/a.toml --on 2026-11-24");
  CHECK(ran.out == "visits/a/2026-11-24.toml\n");
  CHECK(fs::exists(salon.folder.path("visits/a/2026-11-24.toml")));
}

TEST_CASE("names that cannot be seen, or steer what shows them, begin no file", "[hurt]") {
  const OnlyAda salon;
  const auto before = files_below(salon.folder.path(""));
  for (const char* name : {"\u200B", "Rex\u202E", "\x1B[31mRex", "Re\u2066x", "\u00A0"}) {
    const auto ran = salon.run("new pet " + quoted(name));
    INFO(ran.err);
    CHECK(ran.status == 1);
    CHECK(has(ran.err, "gives no name of a file"));
    CHECK_FALSE(has(ran.err, "\x1B"));
  }
  std::vector<std::string> after = files_below(salon.folder.path(""));
  std::erase(after, "schemas/pet.json");
  CHECK(after == before);
}

TEST_CASE("lists show what would steer a terminal", "[hurt]") {
  const OnlyAda salon;
  put(salon.folder, "pets/r.toml",
      "[pet]\nname = \"R\u202Eex\"\n[owner]\nname = \"S\u2066am\"\n[trim]\nvisit_every = \"4 "
      "weeks\"\n");
  for (const char* command : {"find ex", "due --within 8w", "plan r"}) {
    const auto ran = salon.run(command);
    INFO(command << ran.out << ran.err);
    CHECK(ran.status == 0);
    CHECK(has(ran.out, "R\\u{202E}ex"));
    CHECK_FALSE(has(ran.out, "\u202E"));
    CHECK_FALSE(has(ran.out, "\u2066"));
  }
}

TEST_CASE("JSON says what would steer a terminal in its own escapes", "[hurt]") {
  const OnlyAda salon;
  put(salon.folder, "pets/r.toml",
      "[pet]\nname = \"R\u202Eex\"\nbreed = \"\u0085x\"\n[trim]\nvisit_every = \"4 weeks\"\n");
  put(salon.folder, "pets/bad.toml", "[pet]\nname = \"B\"\n\"\u202Ekey\" = 1\n");
  for (const char* command : {"find ex --json", "due --within 8w --json", "plan r --json",
                              "check pets/bad.toml --json"}) {
    const auto ran = salon.run(command);
    INFO(command << ran.out << ran.err);
    CHECK(has(ran.out, "\\u202E"));
    CHECK_FALSE(has(ran.out, "\u202E"));
    CHECK_FALSE(has(ran.out, "\u0085"));
    CHECK(nlohmann::json::parse(ran.out).dump().find("\u202E") != std::string::npos);
  }
}

TEST_CASE("a name that turns what follows turns nothing of a sentence around it", "[hurt]") {
  const OnlyAda salon;
  put(salon.folder, "pets/r.toml",
      "[pet]\nname = \"R\u202Eex\"\n[owner]\nname = \"S\u202Eam\"\n[trim]\nbody = { blade = \"#7\" "
      "}\n");
  const auto ran = salon.run("style r --format text -o -");
  INFO(ran.out << ran.err);
  std::size_t seen = 0;
  for (std::size_t at = 0; (at = ran.out.find("\u202E", at)) != std::string::npos; at += 3) {
    const std::size_t begin = ran.out.rfind('\n', at) + 1, end = ran.out.find('\n', at);
    const std::string line = ran.out.substr(begin, end - begin);
    INFO(line);
    if (has(line, "\"R\u202Eex\"")) continue;  // it is all of its paragraph
    CHECK(line.find("\u2068") < line.find("\u202E"));
    CHECK(line.find("\u2069") != std::string::npos);
    ++seen;
  }
  CHECK(seen > 0);
}

TEST_CASE("of a list that a sentence takes up each part stays what it is", "[hurt]") {
  const OnlyAda salon;
  put(salon.folder, "pets/r.toml",
      "[pet]\nname = \"Rex\"\n[handling]\ncomes_with = [\"red collar\", \"l\u202Eead\", \"towel\"]\n");
  const auto ran = salon.run("card r --language en --format text -o -");
  INFO(ran.out << ran.err);
  CHECK(has(ran.out, "\u2068l\u202Eead\u2069"));
}

TEST_CASE("a list's name that steers what shows it begins no file", "[hurt]") {
  const OnlyAda salon;
  put(salon.folder, "list.csv", "Dog,Owner\nR\u202Eex,Ann\nBo,Ann\n");
  const auto ran = salon.run("import list.csv --write");
  INFO(ran.out << ran.err);
  CHECK(ran.status == 1);
  CHECK(has(ran.err, "gives no name of a file"));
  CHECK(fs::exists(salon.folder.path("pets/bo.toml")));
  for (const std::string& file : files_below(salon.folder.path("")))
    CHECK_FALSE(has(file, "\u202E"));
}

TEST_CASE("a pipe that nobody reads is not waited for without an end", "[hurt]") {
  const OnlyAda salon;
  const std::string pipe = salon.folder.path("pipe.pdf");
  REQUIRE(run("mkfifo " + pipe).status == 0);
  const auto ran = salon.run("card a -o pipe.pdf");
  CHECK(ran.status == 1);
  CHECK(has(ran.err, "pipe.pdf"));
  CHECK(fs::is_fifo(pipe));
}

TEST_CASE("what the standard output did not take is no success", "[hurt]") {
  const OnlyAda salon;
  for (const char* command : {"--version", "--help", "help card", "schema pet", "due", "find a",
                              "plan a", "check", "new day", "card a -o -"}) {
    const auto ran = salon.run(std::string(command) + " > /dev/full");
    INFO(command << ran.err);
    CHECK(ran.status == 1);
    CHECK(has(ran.err, "cannot write to the standard output: No space left on device"));
  }
}

TEST_CASE("a card without a visit that cannot be read says so on its front", "[hurt]") {
  const OnlyAda salon;
  put(salon.folder, "visits/a/2026-11-20.toml", "date = 2026-11-20\nlump = 3\n");
  for (const char* sheet : {"card", "style"}) {
    const auto ran = salon.run(std::string(sheet) + " a --on 2026-11-24");
    CHECK(ran.status == 1);
    const std::string file = std::string("sheets/a-") + sheet + ".pdf";
    const std::string text = test::run("pdftotext -raw -l 1 " + salon.folder.path(file) + " -").out;
    INFO(text);
    CHECK(has(without_space(text),
              without_space("CAUTION A visit’s file cannot be read: ask the desk.")));
  }
  put(salon.folder, "visits/a/2026-11-20.toml", "date = 2026-11-20\nunfinished = false\n");
  CHECK(salon.run("card a --on 2026-11-24").status == 0);
  CHECK_FALSE(has(test::run("pdftotext " + salon.folder.path("sheets/a-card.pdf") + " -").out,
                  "cannot be read"));
}

namespace {
struct RexOnTheWall : SmallSalon {
  RexOnTheWall()
      : SmallSalon{{"salon.toml", "[salon]\nname = \"S\"\nlanguage = \"en-GB\"\n"},
                   {"pets/rex.toml", "[pet]\nname = \"Rex\"\n"},
                   {"days/2026-11-24.toml",
                    "date = 2026-11-24\n[[booking]]\npet = \"rex\"\nat = 09:00:00\n"}} {}
  std::string wall(const std::string& more = {}) const {
    run("day --on 2026-11-24 --force -o wall.pdf " + more);
    return without_space(test::run("pdftotext -raw " + folder.path("wall.pdf") + " -").out);
  }
};
}  // namespace

TEST_CASE("of a pet whose file has faults the wall says what can hurt", "[hurt]") {
  const RexOnTheWall salon;
  put(salon.folder, "pets/rex.toml",
      "[pet]\nname = \"Rex\"\ncolor = \"red\"\n[[alert]]\nlevel = \"dangerous\"\n"
      "text = \"Windpipe collapses.\"\n[bath]\nshampoo = \"oat\"\n");
  const auto ran = salon.run("day --on 2026-11-24");
  CHECK(ran.status == 1);
  CHECK(has(ran.err, "pets/rex.toml:3:1: error"));
  const std::string text = salon.wall();
  INFO(text);
  CHECK(has(text, "Rex"));
  CHECK(has(text, "WARNINGWindpipecollapses."));
  CHECK(has(text, "Thefilehasfaults:askthedesk."));
  CHECK(has(text, "Rex:notcountedhere:nofilethatcanberead."));
  CHECK(has(text, "1notknown"));
  CHECK(has(salon.wall("--week"), "WARNING,nofilethatcanberead"));
  // Of one that cannot be read at all.
  put(salon.folder, "pets/rex.toml", "{{{\n");
  const std::string none = salon.wall();
  INFO(none);
  CHECK(has(none, "Nofilethatcanberead:askthedesk."));
  CHECK(has(none, "rex:notcountedhere"));
}

TEST_CASE("the wall says a bite and felt that only a visit tells of", "[hurt]") {
  const RexOnTheWall salon;
  put(salon.folder, "visits/rex/2026-11-17.toml",
      "date = 2026-11-17\nminutes = 90\n[came_in]\nbehaviour = \"bit at the left rear foot\"\n"
      "\"front legs\" = { mats = 4 }\nears = { mats = 1 }\n");
  const std::string text = salon.wall();
  INFO(text);
  CHECK(has(text, "DANGERVisitof17"));
  CHECK(has(text, "bitattheleftrearfoot."));
  CHECK(has(text, "Mats:Frontlegs"));
  CHECK(has(text, "4/4."));
  CHECK_FALSE(has(text, "1/4"));
  CHECK(has(salon.wall("--week"), "RexDANGER"));
  // One of today counts at once.
  put(salon.folder, "visits/rex/2026-11-17.toml", "date = 2026-11-17\nminutes = 90\n");
  put(salon.folder, "visits/rex/2026-11-24.toml",
      "date = 2026-11-24\nunfinished = true\n[came_in]\nbehaviour = \"bit Ines\"\n");
  CHECK(has(salon.wall(), "bitInes."));
}
}  // namespace furnish::test
