#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>

#include "app/program.h"
#include "output/attachments.h"
#include "output/pdf_rules.h"
#include "sheet/desk.h"
#include "trade/safety.h"

namespace furnish::test {
namespace {
const std::string lantern = sample("lantern-street");
const std::string in_lantern = " --salon " + lantern + " --on " + std::string(demo_date) + " ";
}  // namespace

// 0 done, 1 faults, 2 usage: as `furnish --help` says. Errors go to the standard error.
TEST_CASE("a wrong command line is status 2, said on the standard error", "[command-line]") {
  for (const char* arguments :
       {"", "bake", "card --format jpeg", "card --dpi 3", "card --on 2026-02-30",
        "card --on tomorrow", "card --copies-per-sheet 0", "card --no-such-option", "plan",
        "check --paper A5"}) {
    INFO(arguments);
    const auto ran = furnish(arguments);
    CHECK(ran.status == 2);
    CHECK(ran.out == "");
    CHECK_FALSE(ran.err.empty());
  }
}

TEST_CASE("help and version are results", "[command-line]") {
  const auto help = furnish("--help"), version = furnish("--version"),
             card = furnish("card --help");
  CHECK(help.status == 0);
  CHECK(help.err == "");
  for (const char* command : {"card", "style", "check", "plan", "Exit status"}) {
    INFO(command);
    CHECK(has(help.out, command));
  }
  CHECK(version.status == 0);
  CHECK(version.out.starts_with("furnish "));
  CHECK(card.status == 0);
  CHECK(has(card.out, "--copies-per-sheet"));
}

TEST_CASE("an unknown pet is told its nearest name", "[command-line]") {
  const TemporaryFolder folder;
  const auto ran = furnish("card marlwo" + in_lantern + "-o " + folder.path("a.pdf"));
  CHECK(ran.status == 1);
  CHECK(ran.out == "");
  CHECK(has(ran.err, "no pet 'marlwo'"));
  CHECK(has(ran.err, "did you mean 'marlow'?"));
  CHECK(files_below(folder.path("")).empty());
}

TEST_CASE("pets that are known are done beside one that is not", "[command-line]") {
  const TemporaryFolder folder;
  const auto ran = furnish("card pip nobody dot" + in_lantern + "-o " + folder.path("") + "/");
  CHECK(ran.status == 1);
  CHECK(files_below(folder.path("")) == std::vector<std::string>{"dot-card.pdf", "pip-card.pdf"});
  CHECK(has(ran.out, "pip-card.pdf\n"));
  CHECK_FALSE(has(ran.out, "nobody"));
}

TEST_CASE("an unknown paper is told the known ones", "[command-line]") {
  const TemporaryFolder folder;
  const auto ran = furnish("card pip --paper A9" + in_lantern + "-o " + folder.path("a.pdf"));
  CHECK(ran.status == 2);
  CHECK(has(ran.err, "no paper 'A9'"));
  for (const char* known : {"A4", "A5", "A6", "letter", "half letter", "5x8 in", "4x6 in", "A3"}) {
    CHECK(has(ran.err, known));
  }
  CHECK(files_below(folder.path("")).empty());
}

TEST_CASE("the standard output takes the sheet and nothing else", "[command-line]") {
  const TemporaryFolder folder;
  const auto file = furnish("card pip" + in_lantern + "-o " + folder.path("pip.pdf"));
  CHECK(file.status == 0);
  CHECK(file.out == folder.path("pip.pdf") + "\n");
  const auto out = furnish("card pip" + in_lantern + "-o -");
  CHECK(out.status == 0);
  CHECK(out.err == "");
  CHECK(out.out == bytes_of(folder.path("pip.pdf")));
  const auto all = furnish("card --together" + in_lantern + "-o -");
  CHECK(all.status == 0);
  CHECK(all.out.starts_with("%PDF-"));
  CHECK(all.out.ends_with("%%EOF\n"));
  // Some of them turn over, so that each begins on paper of its own; the last has no other side.
  CHECK(PdfFile(all.out).pages().size() == 2 * Desk(lantern).pets().size() - 1);
}

TEST_CASE("several sheets for one file are a wrong command line", "[command-line]") {
  const TemporaryFolder folder;
  for (const std::string& output : {folder.path("one.pdf"), std::string("-")}) {
    const auto ran = furnish("card pip dot" + in_lantern + "-o " + output);
    CHECK(ran.status == 2);
    CHECK(ran.out == "");
    CHECK(has(ran.err, "--together"));
  }
  const auto png =
      furnish("card pip dot --together --format png" + in_lantern + "-o " + folder.path("one.png"));
  CHECK(png.status == 2);
  CHECK(has(png.err, "PDF only"));
  CHECK(files_below(folder.path("")).empty());
}

TEST_CASE("a sheet is never written over a person's file", "[command-line]") {
  const TemporaryFolder folder;
  put(folder, "rex.toml", "[pet]\nname = \"Rex\"\n");
  const auto ran = furnish("card " + folder.path("rex.toml") + " -o " + folder.path("rex.toml"));
  CHECK(ran.status == 2);
  CHECK(bytes_of(folder.path("rex.toml")) == "[pet]\nname = \"Rex\"\n");
}

TEST_CASE("each format is what its name says", "[command-line]") {
  const auto ask = [](const std::string& format) {
    const auto ran = furnish("card marlow --format " + format + in_lantern + "-o -");
    INFO(ran.err);
    CHECK(ran.status == 0);
    return ran.out;
  };
  CHECK(ask("pdf").starts_with("%PDF-1."));
  CHECK(ask("png").starts_with("\x89PNG\r\n\x1A\n"));
  CHECK(ask("png --dpi 72").size() < ask("png").size());
  const TemporaryFolder folder;
  const std::string svg = folder.file("card.svg", ask("svg"));
  CHECK(run("xmllint --noout " + svg).status == 0);
  // A5 is 148 by 210 mm (ISO 216), 419.528 by 595.276 points; the dump is in millimetres.
  CHECK(ask("text").starts_with("page 148.000 210.000\n"));
  CHECK(has(ask("text"), "\"Marlow\""));
}

TEST_CASE("cards together have an outline of their names", "[command-line]") {
  const auto ran = furnish("card pip dot --together" + in_lantern + "-o -");
  REQUIRE(ran.status == 0);
  const PdfFile file(ran.out);
  CHECK(file.pages().size() == 2);
  QPDFObjectHandle first = file.root().getKey("/Outlines").getKey("/First");
  CHECK(first.getKey("/Title").getUTF8Value() == "Pip");
  CHECK(first.getKey("/Next").getKey("/Title").getUTF8Value() == "Dot");
}

TEST_CASE("pets of one name from two salons travel in one PDF, each with its own file",
          "[command-line]") {
  const TemporaryFolder folder;
  for (const char* const salon : {"east", "west", "far/west"}) {
    put(folder, std::string(salon) + "/salon.toml", "[salon]\nname = \"S\"\n");
    put(folder, std::string(salon) + "/pets/rex.toml",
        std::string("[pet]\nname = \"Rex of ") + salon + "\"\n[trim]\nvisit_every = \"8 weeks\"\n");
    put(folder, std::string(salon) + "/visits/rex/2026-11-01.toml",
        "date = 2026-11-01\nunfinished = false\n");
  }
  put(folder, "east/pets/ada.toml", "[pet]\nname = \"Ada\"\n");
  const std::string in = "cd " + folder.path("") + " &&";
  const auto carried = [&](const std::string& pets) {
    const auto ran = furnish("card " + pets + " --together --on 2026-11-24 -o all.pdf", in);
    INFO(ran.err);
    REQUIRE(ran.status == 0);
    CHECK(pdf_faults(bytes_of(folder.path("all.pdf"))) == std::vector<std::string>{});
    DiagnosticSink sink;
    std::string out;
    for (const Attachment& one : attachments_of(bytes_of(folder.path("all.pdf")), sink)) {
      out += one.name + ": " + matches(one.bytes, "name *= \"([^\"]*)").at(0) + "\n";
    }
    CHECK(sink.all().empty());
    return out;
  };
  CHECK(carried("east/pets/rex.toml east/pets/ada.toml") ==
        "ada.toml: Ada\nrex.toml: Rex of east\n");
  CHECK(carried("east/pets/rex.toml west/pets/rex.toml east/pets/ada.toml") ==
        "ada.toml: Ada\neast-rex.toml: Rex of east\nwest-rex.toml: Rex of west\n");
  CHECK(carried("west/pets/rex.toml far/west/pets/rex.toml") ==
        "west-rex-2.toml: Rex of far/west\nwest-rex.toml: Rex of west\n");
  // One pet twice is one file.
  CHECK(carried("east/pets/rex.toml east/pets/rex.toml") == "rex.toml: Rex of east\n");

  const auto care =
      furnish("care east/pets/rex.toml west/pets/rex.toml --together --on 2026-11-24 -o c.pdf", in);
  CHECK(care.status == 0);
  // Neither calendar entry takes the other's place.
  for (const char* const entry : {"east-rex-care.ics", "west-rex-care.ics"}) {
    CHECK(has(care.out, entry));
    CHECK(std::filesystem::exists(folder.path(entry)));
  }
  const auto out = furnish("unpack all.pdf --pet rex", in);
  CHECK(out.status == 0);
  CHECK(has(out.out, "Rex of east"));
}

TEST_CASE("several copies share a sheet, with marks to cut by", "[command-line]") {
  // Two A5 cards fill an A4 sheet on its side (ISO 216: half of it, to a millimetre).
  const TemporaryFolder folder;
  const std::string pdf = folder.path("two.pdf");
  const auto ran = furnish("card pip --copies-per-sheet 2" + in_lantern + "-o " + pdf);
  INFO(ran.err);
  REQUIRE(ran.status == 0);
  const PdfFile file(bytes_of(pdf));
  REQUIRE(file.pages().size() == 1);
  auto box = items_of(file.pages().front().getKey("/MediaBox"));
  const double mm = 72 / 25.4;
  CHECK(box[2].getNumericValue() == Approx(297 * mm).margin(0.1));
  CHECK(box[3].getNumericValue() == Approx(210 * mm).margin(0.1));
  CHECK(pdf_faults(file.bytes()) == std::vector<std::string>{});
  const std::string text = run("pdftotext -raw " + pdf + " -").out;
  CHECK(matches(text, "(Windpipe)").size() == 2);

  const auto dump =
      furnish("card pip --paper A6 --copies-per-sheet 3 --format text" + in_lantern + "-o -");
  CHECK(dump.status == 0);
  CHECK(dump.out.starts_with("page 210.000 297.000\n"));
  CHECK(matches(dump.out, "(\"Pip\")").size() == 3);
  // Marks stand outside the cards: four A6 fill A4, so at its edges; short strokes.
  CHECK(matches(dump.out, "\n  (stroke )").size() >= 4);
}

TEST_CASE("more copies than a sheet holds are refused with how many do", "[command-line]") {
  const TemporaryFolder folder;
  const auto ran =
      furnish("card pip --copies-per-sheet 3" + in_lantern + "-o " + folder.path("x.pdf"));
  CHECK(ran.status == 1);
  CHECK(has(ran.err, "3 cards do not fit on A4: at most 2 of this size do"));
  CHECK(files_below(folder.path("")).empty());
}

TEST_CASE("different cards share sheets when they are together", "[command-line]") {
  const auto ran =
      furnish("card pip dot marlow --together --copies-per-sheet 2" + in_lantern + "-o -");
  REQUIRE(ran.status == 0);
  // Marlow's card turns over, so that what is behind the first two is blank.
  CHECK(PdfFile(ran.out).pages().size() == 4);
}

TEST_CASE("sheets go to the salon's own folder unless another is named", "[command-line]") {
  const TemporaryFolder folder;
  copy_sample("us-corner", folder.path("salon"));
  const auto before = files_below(folder.path("salon"));
  const auto ran = furnish("card --on 2026-11-24", "cd " + folder.path("salon") + " &&");
  CHECK(ran.status == 0);
  CHECK(ran.out == "sheets/duke-card.pdf\nsheets/waffles-card.pdf\n");
  CHECK(files_below(folder.path("salon")).size() == before.size() + 2);
}

TEST_CASE("check counts files, and finds the samples good", "[command-line]") {
  const auto ran = furnish("check " + lantern + " --on 2026-11-24");
  const std::size_t files = [] {
    const auto all = files_below(lantern);
    return static_cast<std::size_t>(std::ranges::count_if(
        all, [](const std::string& name) { return name.ends_with(".toml"); }));
  }();
  CHECK(ran.status == 0);
  const std::string good = std::to_string(files) + " of " + std::to_string(files);
  CHECK(ran.out.starts_with(good + " files are good; "));
  CHECK(ran.out.ends_with(" pets\n"));
  // What holds for every pet is no line of a check.
  for (const SafetyRule& rule : safety_rules()) {
    if (is_standing(rule)) CHECK_FALSE(has(ran.err, "(" + std::string(rule.key) + ")"));
  }
  CHECK_FALSE(has(ran.err, "error:"));
}

TEST_CASE("check holds the days against the plans", "[command-line]") {
  const TemporaryFolder folder;
  put(folder, "salon.toml", "[salon]\nclosed = [\"sunday\"]\n");
  put(folder, "pets/rex.toml", "[pet]\nname = \"Rex\"\n");
  put(folder, "visits/rex/2026-10-01.toml", "date = 2026-10-01\nminutes = 90\n");
  put(folder, "days/2026-11-29.toml",  // a Sunday
      "date = 2026-11-29\n[[booking]]\nat = 09:00:00\ncollect = 10:00:00\npet = \"rex\"\n"
      "[[booking]]\nat = 09:30:00\npet = \"rex\"\n");
  const std::string check = "check " + folder.path("") + " --on 2026-11-24";
  const auto warned = furnish(check);
  CHECK(warned.status == 0);
  CHECK(has(warned.err, "closed on this day, 2026-11-29"));
  CHECK(has(warned.err, "is booked from 09:00 to 10:00"));
  CHECK(has(warned.err, "rex is booked twice at once"));
  CHECK(has(warned.out + warned.err, "4 of 4 files are good"));
  // A day of the future is read for the pet's plan too, and its fault is said once.
  put(folder, "days/2026-12-01.toml",
      "date = 2026-12-01\n[[booking]]\nat = 09:00:00\npet = \"rexx\"\n");
  put(folder, "days/2026-12-02.toml", "date = 2026-12-02\n[[booking]]\nat = 9\npet = \"rex\"\n");
  const auto bad = furnish(check);
  CHECK(bad.status == 1);
  CHECK(has(bad.err, "no pet 'rexx'"));
  CHECK(has(bad.err, "did you mean 'rex'?"));
  const auto once = bad.err.find("2026-12-02.toml:3");
  REQUIRE(once != std::string::npos);
  CHECK(bad.err.find("2026-12-02.toml:3", once + 1) == std::string::npos);
  CHECK(has(bad.out + bad.err, "4 of 6 files are good"));
}

TEST_CASE("check reads a file that is named alone as what its place makes it", "[command-line]") {
  for (const std::string file : {"days/2026-11-24.toml", "visits/gao/2026-07-21.toml", "salon.toml",
                                 "styles/mud-season.toml", "pets/gao.toml"}) {
    const auto ran = furnish("check " + lantern + "/" + file + " --on 2026-11-24");
    INFO(file << ": " << ran.err);
    CHECK(ran.status == 0);
    // A pet's are its own and those of its four visits.
    const bool pet = file.starts_with("pets/");
    CHECK(ran.out.starts_with(pet ? "5 of 5 files are good" : "1 of 1 files is good"));
    CHECK_FALSE(has(ran.err, "error:"));
  }
  const TemporaryFolder folder;
  put(folder, "salon.toml", "[salon]\nclosed = [\"sundae\"]\n");
  put(folder, "pets/rex.toml", "[pet]\nname = \"Rex\"\n");
  put(folder, "visits/rex/2026-10-01.toml", "date = 2026-10-01\nminute = 90\n");
  put(folder, "visits/rexx/2026-10-01.toml", "date = 2026-10-01\nunfinished = false\n");
  const auto fault = [&](const std::string& file) {
    const auto ran = furnish("check " + folder.path(file));
    CHECK(ran.status == 1);
    CHECK(has(ran.out, "0 of 1 file"));
    return ran.err;
  };
  CHECK(has(fault("salon.toml"), "sunda"));
  put(folder, "salon.toml", "[salon]\n");
  put(folder, "days/2026-11-24.toml",
      "date = 2026-11-24\n[[booking]]\nat = 09:00:00\npet = \"rexx\"\n");
  CHECK(has(fault("days/2026-11-24.toml"), "no pet 'rexx'"));
  CHECK(has(fault("visits/rex/2026-10-01.toml"), "minutes"));
  CHECK(has(fault("visits/rexx/2026-10-01.toml"), "did you mean 'rex'?"));
}

TEST_CASE("check counts what is bad, and says where", "[command-line]") {
  const TemporaryFolder folder;
  put(folder, "salon.toml", "[salon]\nname = \"S\"\n");
  put(folder, "pets/a.toml", "[pet]\nname = \"A\"\n");
  put(folder, "pets/b.toml", "[pet]\nname = \"B\"\nbred = \"spitz\"\n");
  put(folder, "styles/c.toml", "[style]\n");
  const auto ran = furnish("check " + folder.path(""));
  CHECK(ran.status == 1);
  CHECK(ran.out == "2 of 4 files are good\n");
  CHECK(has(ran.err, "pets/b.toml:3:1: error: "));
  CHECK(has(ran.err, "breed"));
  const auto nothing = furnish("check " + folder.path("pets"));
  CHECK(nothing.status == 1);
  CHECK(has(nothing.err, "nothing to check"));
}

TEST_CASE("warnings count only where they are asked to", "[command-line]") {
  const TemporaryFolder folder;
  put(folder, "pets/a.toml", "[pet]\nname = \"A\"\nborn = 2010-04-09\n");
  const std::string check = "check " + folder.path("") + " --on 2026-11-24";
  const auto usual = furnish(check), strict = furnish(check + " --strict");
  CHECK(usual.status == 0);
  CHECK(has(usual.err, "pets/a.toml:3:8: warning: "));
  CHECK(strict.status == 1);
  CHECK(strict.out == usual.out);
}

TEST_CASE("what is long healed asks for no vet, and the card books again", "[command-line]") {
  const auto healed = furnish("plan gao bjarne" + in_lantern);
  CHECK(has(healed.out, "booked at 11:15"));
  CHECK(has(healed.out, "drags the toes"));  // still open
  CHECK_FALSE(has(healed.out, "hot spot, palm-sized"));
  CHECK_FALSE(has(healed.out, "mat all round"));

  const TemporaryFolder folder;
  put(folder, "pets/rex.toml", "[pet]\nname = \"Rex\"\n");
  const std::string booked = "[[booking]]\nat = 09:00:00\npet = \"rex\"\n";
  put(folder, "days/2026-11-24.toml", "date = 2026-11-24\n" + booked);
  const std::string card =
      "card rex --salon " + folder.path("") + " --on 2026-11-24 --format text -o -";
  const auto once = furnish(card);
  CHECK(once.status == 0);
  CHECK_FALSE(has(once.out, "(booked"));
  put(folder, "days/2026-12-15.toml", "date = 2026-12-15\n" + booked);
  const auto twice = furnish(card);
  INFO(twice.out);
  CHECK(has(twice.out, "15 December (booked"));
}

TEST_CASE("a plan is text for a person, and JSON that another program reads", "[command-line]") {
  const auto text = furnish("plan juniper marlow" + in_lantern);
  CHECK(text.status == 0);
  CHECK(has(text.out, "Juniper"));
  CHECK(has(text.out, "Marlow"));
  for (const std::string& key : Desk(lantern).pets()) {
    INFO(key);
    const auto json = furnish("plan " + key + " --json" + in_lantern + "| python3 -m json.tool");
    CHECK(json.status == 0);
    CHECK(has(json.out, "\"on\": \"2026-11-24\""));
  }
}
}  // namespace furnish::test
