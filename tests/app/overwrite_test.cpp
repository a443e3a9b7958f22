#include <catch2/catch.hpp>

#include <filesystem>

#include "app/program.h"
#include "app/small_salon.h"

namespace furnish::test {
namespace {
namespace fs = std::filesystem;

/// A salon with one pet of which every file is a person's own.
struct OwnFiles : SmallSalon {
  OwnFiles()
      : SmallSalon{{"salon.toml", "[salon]\nname = \"S\"\n"},
                   {"pets/rex.toml", "[pet]\nname = \"Rex\"\n[trim]\nvisit_every = \"8 weeks\"\n"},
                   {"visits/rex/2026-11-20.toml",
                    "date = 2026-11-20\nunfinished = false\nnext = 2027-01-15\n"},
                   {"photos/rex.jpg", "not even a photo"},
                   {"rex.ics", "a dentist's appointment"},
                   {"salon.toml.bak", "[salon]\nname = \"Before\"\n"}} {}
  ToolOutput run(const std::string& arguments) const {
    return SmallSalon::run(arguments + " --on 2026-11-24");
  }
};
}  // namespace

TEST_CASE("no sheet lands on a file that a person wrote") {
  const OwnFiles salon;
  const std::string file = GENERATE("photos/rex.jpg", "salon.toml.bak", "rex.ics");
  const std::string command = GENERATE("card", "style", "care");
  CAPTURE(file, command);
  // There the care sheet's own calendar entry goes: not a matter of --force.
  if (command == "care" && file == "rex.ics") {
    CHECK(salon.run("care rex --force -o rex.ics").status == 2);
    CHECK(salon.text(file) == "a dentist's appointment");
    return;
  }
  const std::string before = salon.text(file);
  const auto ran = salon.run(command + " rex --format pdf -o " + file);
  CHECK(ran.status == 1);
  CHECK(has(ran.err, "is no sheet that furnish wrote and nobody changed; it is left as it is"));
  CHECK(has(ran.err, "--force"));
  CHECK(salon.text(file) == before);
  CHECK(salon.run(command + " rex --force --format pdf -o " + file).status == 0);
  CHECK(salon.text(file).starts_with("%PDF-"));
}

TEST_CASE("sides that a sheet no longer has go, if furnish wrote them") {
  const OwnFiles salon;
  const std::string pet = "[pet]\nname = \"Rex\"\n[trim]\nvisit_every = \"8 weeks\"\n";
  std::string many = pet;
  for (int i = 0; i < 9; ++i) {
    many +=
        "[[alert]]\nlevel = \"warning\"\ntext = \"Snaps at whoever lifts a foot of his\"\n"
        "do = \"A second person, and rests between the feet.\"\n";
  }
  const std::string render = "card rex --paper A6 --format png -o rex-card.png";
  put(salon.folder, "pets/rex.toml", many);
  REQUIRE(salon.run(render).status == 0);
  CHECK(salon.text("rex-card.png").starts_with("\x89PNG"));
  REQUIRE(salon.text("rex-card-2.png").starts_with("\x89PNG"));

  // Four cards on a sheet, and behind them what is behind each.
  REQUIRE(salon.run("card rex --paper A6 --copies-per-sheet 4 -o four.pdf").status == 0);
  const auto pages = test::run("pdfinfo " + salon.folder.path("four.pdf"));
  CHECK((has(pages.out, "Pages:           2") || has(pages.out, "Pages:           4")));

  put(salon.folder, "pets/rex.toml", pet);
  SECTION("which furnish did") {
    const auto ran = salon.run(render);
    CHECK(ran.status == 0);
    CHECK_FALSE(fs::exists(salon.folder.path("rex-card-2.png")));
    CHECK(has(ran.err, "left-over") == false);
  }
  SECTION("which somebody else did, or drew on") {
    put(salon.folder, "rex-card-2.png", salon.text("rex-card-2.png") + "and more");
    const auto ran = salon.run(render);
    CHECK(ran.status == 0);
    CHECK(fs::exists(salon.folder.path("rex-card-2.png")));
    CHECK(has(ran.err, "rex-card-2.png is of no sheet that was made now, and stays"));
  }
}

TEST_CASE("a pet's own file is no place for a sheet, however it is spelt") {
  const OwnFiles salon;
  put(salon.folder, "pets/Ada.TOML", "[pet]\nname = \"Ada\"\n");
  for (const std::string file : {"pets/rex.toml", "pets/Ada.TOML", "pets/new.Toml"}) {
    for (const std::string force : {"", " --force"}) {
      const auto ran = salon.run("card rex -o " + file + force);
      CAPTURE(file, force, ran.err);
      CHECK(ran.status == 2);
    }
  }
  CHECK(salon.text("pets/rex.toml").starts_with("[pet]"));
  CHECK(salon.text("pets/Ada.TOML").starts_with("[pet]"));
  CHECK_FALSE(fs::exists(salon.folder.path("pets/new.Toml")));
}

TEST_CASE("a list for the desk is never written over a file that a person wrote, nor named so") {
  const OwnFiles salon;
  const std::string before = salon.text("salon.toml");
  for (const std::string list : {"due", "expiring", "find rex"}) {
    for (const std::string more : {" --format pdf", " --format pdf --force", ""}) {
      for (const std::string file : {"salon.toml", "pets/new.TOML"}) {
        const auto ran = salon.run(list + more + " -o " + file);
        CAPTURE(list, more, file, ran.err);
        CHECK(ran.status == 2);
        CHECK(has(ran.err, "over a file that a person wrote (.toml)"));
      }
    }
  }
  CHECK(salon.text("salon.toml") == before);
  CHECK_FALSE(fs::exists(salon.folder.path("pets/new.TOML")));
}

TEST_CASE("a sheet under a name of the person's own takes no side of another sheet away") {
  const OwnFiles salon;
  put(salon.folder, "pets/wren.toml", "[pet]\nname = \"Wren\"\n");
  const std::string format = GENERATE("png", "svg");
  REQUIRE(salon.run("card wren -o kennel-2." + format).status == 0);
  const std::string wren = salon.text("kennel-2." + format);
  const auto ran = salon.run("card rex -o kennel." + format);
  CHECK(ran.status == 0);
  CHECK(salon.text("kennel-2." + format) == wren);
  CHECK(has(ran.err, "kennel-2." + format +
                         " is of no sheet that was made now, and stays: it is a "
                         "side of another sheet"));
}

TEST_CASE("where only the calendar entry is refused, the sheet counts as made") {
  const OwnFiles salon;
  put(salon.folder, "pets/wren.toml", "[pet]\nname = \"Wren\"\n");
  put(salon.folder, "sheets/rex-care.ics", "a dentist's appointment");
  const auto ran = salon.run("care");
  CHECK(ran.status == 1);
  CHECK(has(ran.err, "rex-care.ics' is there already"));
  CHECK(has(ran.err, "2 of 2; 1 with faults"));
  CHECK(fs::exists(salon.folder.path("sheets/rex-care.pdf")));
}

TEST_CASE("no sheet is written through a link") {
  const OwnFiles salon;
  fs::create_directory(salon.folder.path("sheets"));
  const std::string link = salon.folder.path("sheets/rex-card.pdf");
  fs::create_symlink("../pets/rex.toml", link);
  const std::string before = salon.text("pets/rex.toml");
  const auto ran = salon.run("card");
  CHECK(ran.status == 1);
  CHECK(has(ran.err, "is a link, and a sheet is never written through one"));
  CHECK(salon.text("pets/rex.toml") == before);
  CHECK(fs::is_symlink(link));
}

TEST_CASE("a calendar entry never lands on a person's, nor beside a device") {
  const OwnFiles salon;
  const std::string before = salon.text("rex.ics");
  const auto ran = salon.run("care rex -o rex.pdf");
  CHECK(ran.status == 1);
  CHECK(has(ran.err, "'rex.ics' is there already"));
  CHECK(salon.text("rex.ics") == before);
  CHECK(salon.run("care rex -o /dev/null").status == 0);
  CHECK_FALSE(fs::exists("/dev/null.ics"));
}

TEST_CASE("a sheet that was made before is made again; one that was written on stays") {
  const OwnFiles salon;
  for (const std::string format : {"pdf", "png", "svg", "text"}) {
    CAPTURE(format);
    const std::string run = "care --format " + format;
    REQUIRE(salon.run(run).status == 0);
    const std::string file = "sheets/rex-care." + (format == "text" ? "txt" : format);
    const std::string first = salon.text(file);
    CHECK(salon.run(run).status == 0);
    CHECK(salon.text(file) == first);
    put(salon.folder, file, first + "called her, comes on Friday\n");
    CHECK(salon.run(run).status == 1);
    CHECK(salon.text(file) == first + "called her, comes on Friday\n");
    fs::remove(salon.folder.path(file));
  }
}
}  // namespace furnish::test
