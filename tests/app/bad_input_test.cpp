#include <unistd.h>

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>

#include "app/program.h"
#include "app/small_salon.h"
#include "base/paper.h"
#include "output/pdf_rules.h"
#include "sheet/desk.h"

namespace furnish::test {
namespace {
namespace fs = std::filesystem;

/// A salon with a good pet on both sides of `b`, which a test makes bad in its own way.
struct BadAmongGood : SmallSalon {
  BadAmongGood()
      : SmallSalon{{"salon.toml", "[salon]\nname = \"S\"\n"},
                   {"pets/a.toml", "[pet]\nname = \"Ada\"\n"},
                   {"pets/c.toml", "[pet]\nname = \"Cyd\"\n"}} {}
  std::string bad() const { return folder.path("pets/b.toml"); }

  /// Renders all: the bad one is an error that says `what`, the others are there, nothing else is.
  std::string rendered_but_b(const std::string& what) const {
    const auto ran = run("card --on 2026-11-24");
    INFO(ran.err);
    CHECK(ran.status == 1);
    CHECK(has(ran.err, "pets/b.toml"));
    CHECK(has(ran.err, "error: "));
    CHECK(has(ran.err, what));
    CHECK(files_below(folder.path("sheets")) ==
          std::vector<std::string>{"a-card.pdf", "c-card.pdf"});
    CHECK(ran.out == "sheets/a-card.pdf\nsheets/c-card.pdf\n");
    for (const char* name : {"sheets/a-card.pdf", "sheets/c-card.pdf"}) {
      CHECK(PdfFile(bytes_of(folder.path(name))).pages().size() == 1);
    }
    return ran.err;
  }
  std::string with(std::string_view bytes, const std::string& what) const {
    put(folder, "pets/b.toml", bytes);
    return rendered_but_b(what);
  }
};

std::string repeated(std::string_view piece, std::size_t times) {
  std::string out;
  for (std::size_t i = 0; i < times; ++i) out += piece;
  return out;
}
}  // namespace

TEST_CASE("a file that is none is refused, and the rest of the batch is done", "[bad-input]") {
  BadAmongGood salon;
  SECTION("a folder") {
    fs::create_directory(salon.bad());
    salon.rendered_but_b("is a folder");
  }
  SECTION("a named pipe is not waited for") {
    REQUIRE(run("mkfifo " + salon.bad()).status == 0);
    salon.rendered_but_b("not a regular file");
  }
  SECTION("a link to what is no salon's business") {
    put(salon.folder, "secret", "root: x = secret-word\n");
    fs::create_symlink(salon.folder.path("secret"), salon.bad());
    const std::string said =
        salon.rendered_but_b("is a link, and what it leads to is not TOML as it stands");
    CHECK_FALSE(has(said, "secret-word"));
  }
  SECTION("a link to nowhere") {
    fs::create_symlink("nowhere", salon.bad());
    salon.rendered_but_b("No such file");
  }
  SECTION("a file that may not be read") {
    if (::geteuid() == 0) return;  // root may read everything
    put(salon.folder, "pets/b.toml", "[pet]\nname = \"Bo\"\n");
    fs::permissions(salon.bad(), fs::perms::none);
    salon.rendered_but_b("Permission denied");
  }
}

TEST_CASE("a file with bytes of another kind is refused", "[bad-input]") {
  const BadAmongGood salon;
  SECTION("over 64 KiB, with that bound") {
    salon.with("[pet]\nname = \"Bo\"\n#" + repeated("x", 65536), "64 KiB");
  }
  SECTION("broken UTF-8, with its place") {
    CHECK(has(salon.with("[pet]\nname = \"B\xC3(\"\n", "UTF-8"), "pets/b.toml:2:"));
  }
  SECTION("another encoding's text") {
    salon.with(std::string("\xFF\xFE[\0p\0e\0t\0]\0", 12), "UTF-8");
  }
  SECTION("zero bytes") {
    salon.with(std::string("[pet]\nname = \"\0\"\n", 17), "pets/b.toml:2:");
  }
  SECTION("empty") {
    salon.with("", "pet");
  }
  SECTION("only a comment") {
    salon.with("# nothing yet\n", "pet");
  }
}

TEST_CASE("TOML that is deeper than anything is refused in a moment", "[bad-input]") {
  const BadAmongGood salon;
  SECTION("dotted") {
    salon.with(repeated("a.", 10'000) + "a = 1\n", "");
  }
  SECTION("a dotted table") {
    salon.with("[" + repeated("a.", 10'000) + "a]\n", "");
  }
  SECTION("lists in lists") {
    salon.with("a = " + repeated("[", 10'000) + repeated("]", 10'000) + "\n", "");
  }
  SECTION("tables in tables") {
    salon.with("a = " + repeated("{ a = ", 10'000) + "1" + repeated(" }", 10'000) + "\n", "");
  }
}

TEST_CASE("numbers out of range are refused with their place and bounds", "[bad-input]") {
  const BadAmongGood salon;
  CHECK(has(salon.with("[pet]\nname = \"Bo\"\nweight = nan\n", "weight"), "pets/b.toml:3:"));
  CHECK(has(salon.with("[pet]\nname = \"Bo\"\nweight = \"900 kg\"\n", "150"), "pets/b.toml:3:"));
  CHECK(has(salon.with("[pet]\nname = \"Bo\"\nborn = 1066-10-14\n", "1990"), "pets/b.toml:3:"));
  CHECK(has(salon.with("[pet]\nname = \"Bo\"\n[trim]\ntail = { shears = \"straight\", leave = "
                       "\"99999999999999999999 mm\" }\n",
                       "expected a length"),
            "pets/b.toml:4:"));
}

TEST_CASE("NaN in a salon's settings is told with its place, and its pets' cards say so",
          "[bad-input]") {
  const SmallSalon salon{{"salon.toml", "[salon]\nname = \"S\"\n[time]\nbase = nan\n"},
                         {"pets/a.toml", "[pet]\nname = \"Ada\"\n"}};
  const auto ran = salon.run("card a --format text -o -");
  CHECK(ran.status == 1);
  CHECK(has(ran.err, "salon.toml:4:"));
  CHECK(has(ran.out, "[time]"));
}

TEST_CASE("a misspelt key of salon.toml costs no sheet, and every run tells it", "[bad-input]") {
  const SmallSalon salon{
      {"salon.toml", "[salon]\nname = \"S\"\nphon = \"555 0170\"\n"},
      {"pets/a.toml", "[pet]\nname = \"Ada\"\n[[alert]]\nlevel = \"danger\"\ntext = \"Bites.\"\n"},
      {"days/2026-11-24.toml", "date = 2026-11-24\n[[booking]]\nat = 10:00:00\npet = \"a\"\n"}};
  for (const char* const sheets :
       {"card --booked", "card --booked", "style", "day", "day --week"}) {
    const auto ran = salon.run(std::string(sheets) + " --on 2026-11-24");
    INFO(sheets << ": " << ran.err);
    CHECK(ran.status == 1);
    CHECK(has(ran.err, "salon.toml:3:1: error: no key 'phon'"));
    CHECK(has(ran.out, ".pdf"));
  }
  CHECK(has(salon.run("card a --on 2026-11-24 --format text -o -").out, "Bites."));
  CHECK(has(salon.run("check").out, "2 of 3 files are good"));
}

TEST_CASE("what a fault of salon.toml hides is on no page as a default", "[bad-input]") {
  const std::string pet =
      "[pet]\nname = \"Ada\"\ncoat = \"curly\"\nweight = \"8 kg\"\n[bath]\nshampoo = \"oat\"\n"
      "[vaccinations]\nrabies = 2020-01-01\n";
  const std::string day = "date = 2026-11-24\n[[booking]]\nat = 10:00:00\npet = \"a\"\n";
  const SmallSalon salon{{"salon.toml",
                          "[products.oat]\nname = \"oat soap\"\ndilution = \"10:1\"\n[mixing]\n"
                          "curlly = \"1 l\"\n"},
                         {"pets/a.toml", pet},
                         {"days/2026-11-24.toml", day}};
  const auto text = [&](const std::string& what) {
    const auto ran = salon.run(what + " --on 2026-11-24 --format text -o -");
    CHECK(ran.status == 1);
    return ran.out;
  };
  // The dilution is known, and how much of it for the dog is not.
  CHECK(has(text("card a"), "[mixing]"));
  CHECK(has(text("card a"), "45"));
  CHECK(has(text("day"), "[mixing]"));
  CHECK(has(text("day"), "whose"));
  put(salon.folder, "salon.toml",
      "[products.oat]\nname = \"oat soap\"\ndillution = \"10:1\"\n[vaccinations]\n"
      "rabies = { vaild = \"1 year\", required = true }\n");
  const std::string card = text("card a");
  CHECK(has(card, "[products.oat]"));
  CHECK(has(card, "[vaccinations]"));
  CHECK_FALSE(has(card, "45"));
  CHECK(has(salon.run("plan a --on 2026-11-24").out, "[vaccinations]"));
  CHECK(salon.run("expiring --on 2026-11-24").out.empty());
  // On which day the owner shall come again nobody knows without the closed days.
  put(salon.folder, "salon.toml", "[salon]\nclosed = [\"sundae\"]\n");
  put(salon.folder, "visits/a/2026-11-01.toml", "date = 2026-11-01\nminutes = 60\n");
  put(salon.folder, "pets/a.toml", pet + "[trim]\nvisit_every = \"8 weeks\"\n");
  std::filesystem::remove(salon.folder.path("days/2026-11-24.toml"));
  CHECK(has(text("card a"), "[salon] closed"));
  CHECK_FALSE(has(text("care a"), "27 December"));
  // A list's weights have the salon's unit: nothing is read without it.
  put(salon.folder, "clients.csv", "Dog,Weight\nRex,12\n");
  CHECK(salon.run("import clients.csv --write").status == 1);
  CHECK_FALSE(std::filesystem::exists(salon.folder.path("pets/rex.toml")));
}

TEST_CASE("a name of 500 characters is set whole, over further sides if need be", "[bad-input]") {
  const TemporaryFolder folder;
  const std::string name = repeated("W", 500);
  put(folder, "pets/b.toml", "[pet]\nname = \"" + name + "\"\n");
  for (const Paper& paper : papers) {
    const auto ran = furnish(
        "card b --on 2026-11-24 --format text -o - --paper '" + std::string(paper.name) + "'",
        "cd " + folder.path("") + " &&");
    INFO(paper.name << "\n" << ran.err);
    CHECK(ran.status == 0);
    CHECK(std::ranges::count(ran.out, 'W') >= 500);
  }
}

TEST_CASE("marks of other editors do no harm", "[bad-input]") {
  const TemporaryFolder folder;
  put(folder, "plain.toml", "[pet]\nname = \"Rex\"\n[handling]\nhold = \"under the jaw\"\n");
  put(folder, "bom.toml",
      "\xEF\xBB\xBF[pet]\nname = \"Rex\"\n[handling]\nhold = \"under the jaw\"\n");
  put(folder, "crlf.toml", "[pet]\r\nname = \"Rex\"\r\n[handling]\r\nhold = \"under the jaw\"\r\n");
  const auto card = [&](const std::string& name) {
    const auto ran = furnish("card " + folder.path(name) + " --on 2026-11-24 --format text -o -");
    INFO(name << ran.err);
    CHECK(ran.status == 0);
    CHECK(ran.err == "");
    return ran.out;
  };
  const std::string plain = card("plain.toml");
  CHECK(card("bom.toml") == plain);
  CHECK(card("crlf.toml") == plain);
}

TEST_CASE("a pet file outside any salon renders", "[bad-input]") {
  const TemporaryFolder folder;
  put(folder, "rex.toml", "[pet]\nname = \"Rex\"\n[trim]\nstyle = \"smooth-tidy\"\n");
  const auto ran = furnish("card rex.toml --on 2026-11-24", "cd " + folder.path("") + " &&");
  INFO(ran.err);
  CHECK(ran.status == 0);
  CHECK(ran.err == "");
  CHECK(files_below(folder.path("")) == std::vector<std::string>{"rex-card.pdf", "rex.toml"});
  const std::string text = run("pdftotext -raw " + folder.path("rex-card.pdf") + " -").out;
  CHECK(has(text, "Rex"));
  CHECK(has(text, "Smooth tidy, as it is."));
}

TEST_CASE("output that cannot be written is said, and nothing is left of it", "[bad-input]") {
  const TemporaryFolder folder;
  put(folder, "rex.toml", "[pet]\nname = \"Rex\"\n");
  put(folder, "a-file", "not a folder");
  const std::string card = "card " + folder.path("rex.toml") + " -o ";
  const auto fails = [&](const std::string& arguments, const std::string& what) {
    const auto ran = furnish(arguments);
    INFO(arguments << ": " << ran.err);
    CHECK(ran.status == 1);
    CHECK(ran.out == "");
    CHECK(has(ran.err, "error: "));
    CHECK(has(ran.err, what));
  };
  const auto before = files_below(folder.path(""));
  fails(card + "/dev/full", "No space left");
  fails(card + "- > /dev/full", "No space left");
  fails(card + folder.path("a-file/rex.pdf"), "a-file");
  fails(card + folder.path("no/such/folder.pdf"), "no/such");
  fails(card + "/proc/furnish.pdf", "/proc/furnish.pdf");
  CHECK(files_below(folder.path("")) == before);
  CHECK(bytes_of(folder.path("a-file")) == "not a folder");
}

TEST_CASE("a folder without permission takes nothing", "[bad-input]") {
  if (::geteuid() == 0) return;  // root may write everywhere; /proc above stands for it
  const TemporaryFolder folder;
  put(folder, "rex.toml", "[pet]\nname = \"Rex\"\n");
  fs::create_directory(folder.path("closed"));
  fs::permissions(folder.path("closed"), fs::perms::owner_read | fs::perms::owner_exec);
  const auto ran =
      furnish("card " + folder.path("rex.toml") + " -o " + folder.path("closed") + "/");
  CHECK(ran.status == 1);
  CHECK(has(ran.err, "Permission denied"));
}

TEST_CASE("what cannot be read is not taken for absent", "[bad-input]") {
  // A link to itself stands for a folder without rights, which root has everywhere.
  const auto closed = [](const BadAmongGood& salon, const std::string& what) {
    fs::create_directories(fs::path(salon.folder.path(what)).parent_path());
    fs::remove_all(salon.folder.path(what));
    fs::create_symlink(fs::path(what).filename(), salon.folder.path(what));
    return "cd " + salon.folder.path("") + " &&";
  };
  for (const char* what : {"salon.toml", "visits/a", "days", "styles", "pets"}) {
    BadAmongGood salon;
    const auto ran = furnish("check --on 2026-11-24", closed(salon, what));
    INFO(what << ": " << ran.err << ran.out);
    CHECK(ran.status == 1);
    CHECK(has(ran.err, std::string(what) + ": error: cannot be read: "));
    // Words lie in styles/, which cannot be read either.
    if (std::string_view(what) == "styles") continue;
    CHECK(ran.err.find("error: ") == ran.err.rfind("error: "));
  }
  BadAmongGood visits;
  put(visits.folder, "visits/a/2026-04-01.toml", "date = 2026-04-01\n");
  const auto note = furnish("note a --on 2026-11-24", closed(visits, "visits/a"));
  CHECK(note.status == 1);
  CHECK(has(note.err, "visits/a: error: cannot be read: "));
  CHECK(note.out.empty());
  BadAmongGood salon;
  for (const char* what : {"salon.toml", "styles/words"}) {
    const auto card = furnish("card a --on 2026-11-24", closed(salon, what));
    CHECK(card.status == 1);
    CHECK(card.out.empty());
    fs::remove(salon.folder.path(what));
  }
}

TEST_CASE("two pets whose sheets would have one name are refused before any is written",
          "[bad-input]") {
  const TemporaryFolder folder;
  put(folder, "x/pets/rex.toml", "[pet]\nname = \"Rex\"\n");
  put(folder, "y/pets/rex.toml", "[pet]\nname = \"Max\"\n");
  const std::string in = "cd " + folder.path("") + " &&";
  const auto ran = furnish("card x/pets/rex.toml y/pets/rex.toml -o out/", in);
  CHECK(ran.status == 2);
  CHECK(has(ran.err, "x/pets/rex.toml and y/pets/rex.toml would have sheets of one name"));
  CHECK_FALSE(fs::exists(folder.path("out")));
  CHECK(furnish("card x/pets/rex.toml y/pets/rex.toml", in).out ==
        "x/sheets/rex-card.pdf\ny/sheets/rex-card.pdf\n");
}

TEST_CASE("a full device is a fault of check too", "[bad-input]") {
  const BadAmongGood salon;
  const auto ran = furnish("check > /dev/full", "cd " + salon.folder.path("") + " &&");
  CHECK(ran.status == 1);
  CHECK(has(ran.err, "error: cannot write to the standard output: No space left on device"));
}

TEST_CASE("what steers a terminal is shown, not done, and hides nothing behind it", "[bad-input]") {
  const TemporaryFolder folder;
  const std::string path =
      folder.file("rex.toml",
                  "[pet]\nname = \"Rex\"\n\"a\\u0000b\" = 1\n\"\\u001b[2J\" = 2\n"
                  "\"\u202Ec\" = 3\n\"\\u009B1m\" = 4\n");
  const auto ran = furnish("card -o - " + path + " > /dev/null");
  INFO(ran.err);
  CHECK(ran.status == 1);
  for (const char* seen : {"a\\u{0}b", "\\u{1B}[2J", "\\u{202E}c", "\\u{9B}1m"}) {
    CHECK(has(ran.err, seen));
  }
  for (const std::string& raw :
       {std::string(1, '\0'), std::string("\x1B"), std::string("\u202E")}) {
    CHECK_FALSE(has(ran.err, raw));
  }
  const auto unseen = furnish("card -o - " + folder.file("u.toml", "[pet]\nname = \"\u200B\"\n"));
  CHECK(unseen.status == 1);
  CHECK(has(unseen.err, "name is blank"));
}

TEST_CASE("a mark of direction in a breed turns nothing but the breed", "[bad-input]") {
  const TemporaryFolder folder;
  const std::string path = folder.file(
      "rex.toml", "[pet]\nname = \"Rex\"\nbreed = \"Mix\u2069\u202Ed\"\ncolour = \"red\"\n");
  const auto ran = furnish("card -o - --format text " + path);
  CHECK(ran.status == 0);
  CHECK(has(ran.out, "\"\u2068Mix\u202Ed\u2069, red\""));
}

TEST_CASE("an old sheet stays whole when the new one fails", "[bad-input]") {
  const TemporaryFolder folder;
  put(folder, "rex.toml", "[pet]\nname = \"Rex\"\n");
  const std::string card = "card " + folder.path("rex.toml") + " -o " + folder.path("rex.pdf");
  REQUIRE(furnish(card).status == 0);
  const std::string old = bytes_of(folder.path("rex.pdf"));
  put(folder, "rex.toml", "[pet]\nname = Rex\n");
  CHECK(furnish(card).status == 1);
  CHECK(bytes_of(folder.path("rex.pdf")) == old);
  CHECK(files_below(folder.path("")) == std::vector<std::string>{"rex.pdf", "rex.toml"});
}

TEST_CASE("a reader that closes the pipe early is a fault or nothing, never a crash",
          "[bad-input]") {
  const TemporaryFolder folder;
  run("{ " + test::quoted(FURNISH_PROGRAM) + " card --together --salon " +
      sample("lantern-street") + " -o -; echo $? >" + folder.path("status") + "; } | true");
  const std::string status = bytes_of(folder.path("status"));
  CHECK((status == "0\n" || status == "1\n"));
}

TEST_CASE("without its fonts the program says so", "[bad-input]") {
  const TemporaryFolder folder;
  put(folder, "rex.toml", "[pet]\nname = \"Rex\"\n");
  const auto ran = furnish("card " + folder.path("rex.toml") + " --data /nonexistent -o " +
                           folder.path("rex.pdf"));
  CHECK(ran.status == 1);
  CHECK(has(ran.err, "SourceSans3"));
  CHECK(has(ran.err, "/nonexistent/fonts"));
  CHECK(files_below(folder.path("")) == std::vector<std::string>{"rex.toml"});
}
}  // namespace furnish::test
