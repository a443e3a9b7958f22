#include <catch2/catch.hpp>

#include <filesystem>
#include <nlohmann/json.hpp>

#include "app/program.h"
#include "app/small_salon.h"
#include "output/pdf_rules.h"
#include "sheet/desk.h"

// A front desk's questions about the sample salon on its day, and about made ones.

namespace furnish::test {
namespace {
namespace fs = std::filesystem;
using Json = nlohmann::json;

const std::string lantern = sample("lantern-street");
const std::string in_lantern = " --salon " + lantern + " --on " + std::string(demo_date);

Json asked(const std::string& question) {
  const auto ran = furnish(question + " --json" + in_lantern);
  INFO(ran.err);
  CHECK(ran.status == 0);
  return Json::parse(ran.out);
}
}  // namespace

TEST_CASE("due lists who comes, the longest over first", "[front-desk]") {
  const Json rows = asked("due");
  REQUIRE(rows.size() > 3);
  int before = 100000;
  for (const Json& row : rows) {
    INFO(row.dump());
    // Last those of which nobody knows a day.
    if (row["due"].is_null()) {
      CHECK(row["reason"] == "no groom on file");
      CHECK(row["days_over"].is_null());
      before = -100000;
      continue;
    }
    CHECK(row["days_over"] <= before);
    before = row["days_over"];
    // Two weeks from the day, unless it says.
    CHECK(before >= -14);
    CHECK(row["due"] <= "2026-12-08");
    // What `plan` says of that pet.
    const auto plan = furnish("plan " + row["pet"].get<std::string>() + " --json" + in_lantern);
    CHECK(has(plan.out, "\"" + row["due"].get<std::string>() + "\""));
  }
  CHECK(asked("due --within 1d").size() < rows.size());
  CHECK(asked("due --within '6 months'").size() > rows.size());
  const auto text = furnish("due" + in_lantern);
  CHECK(text.status == 0);
  CHECK(has(text.out, "Juniper"));
  CHECK(has(text.out, "555 0"));
  CHECK(furnish("due --within soon" + in_lantern).status == 2);
}

TEST_CASE("that nobody is due is said only where everybody could be read", "[front-desk]") {
  const SmallSalon salon{
      {"pets/rex.toml", "[pet]\nname = \"Rex\"\n[trim]\nvisit_every = \"8 weeks\"\n"},
      {"visits/rex/2026-11-20.toml", "date = 2026-11-20\nunfinished = false\n"}};
  const std::string here = "--on 2026-11-24";
  CHECK(salon.run("due " + here).out == "nobody is due by 2026-12-08\n");
  put(salon.folder, "pets/bo.toml", "[pet]\nname = \n");
  for (const char* const asked : {"due ", "expiring ", "find mo "}) {
    const auto ran = salon.run(asked + here);
    INFO(asked << ran.err);
    CHECK(ran.status == 1);
    CHECK(ran.out == "missing, as a file has faults: bo\n");
  }
  salon.run("due -o due.pdf " + here);
  const std::string page = run("pdftotext -raw " + salon.folder.path("due.pdf") + " -").out;
  CHECK(has(page, "Missing, a file has faults: bo."));
  CHECK_FALSE(has(page, "Nobody"));
}

TEST_CASE("what visits that cannot be read would say is not said for them", "[front-desk]") {
  const SmallSalon salon{
      {"pets/rex.toml", "[pet]\nname = \"Rex\"\n[trim]\nvisit_every = \"8 weeks\"\n"},
      {"visits/rex/2026-11-20.toml", "date = \n"}};
  const std::string here = "--on 2026-11-24";
  const auto due = salon.run("due " + here);
  CHECK(due.status == 1);
  CHECK(has(due.out, "Rex  day not known"));
  CHECK(has(due.out, "not all visits can be read"));
  CHECK_FALSE(has(due.out, "no groom on file"));
  salon.run("due -o due.pdf " + here);
  const std::string page =
      run("pdftotext -raw " + salon.folder.path("due.pdf") + " - | tr '\n' ' '").out;
  CHECK(has(page, "A visit’s file cannot be read"));
  CHECK(has(salon.run("plan rex " + here).out, "not known: not all visits can be read"));
  const auto card = salon.run("card rex --format text -o - " + here);
  CHECK_FALSE(has(card.out, "No groom on file"));
  CHECK(has(card.out, "A visit’s file cannot be read"));
  // Of another that was read first, its day is no more than a guess.
  put(salon.folder, "visits/rex/2026-09-20.toml", "date = 2026-09-20\nunfinished = false\n");
  CHECK(has(salon.run("plan rex " + here).out, "if not booked"));
  CHECK_FALSE(has(salon.run("card rex --format text -o - " + here).out, "15 November"));
}

TEST_CASE("who may be booked on a day that cannot be read is named, and a page says what it lacks",
          "[front-desk]") {
  const SmallSalon salon{
      {"pets/rex.toml", "[pet]\nname = \"Rex\"\n[trim]\nvisit_every = \"8 weeks\"\n"},
      {"visits/rex/2026-11-20.toml", "date = 2026-11-20\nunfinished = false\n"},
      {"days/2026-11-30.toml", "date = 2026-11-30\n[[booking]]\nat = \npet = \"rex\"\n"}};
  const std::string here = "--on 2026-11-24";
  const auto due = salon.run("due " + here);
  CHECK(due.status == 1);
  CHECK(has(due.out, "Rex  in 52 days"));
  CHECK(has(due.out, "not all bookings can be read from 2026-11-30"));
  fs::remove_all(salon.folder.path("days"));
  CHECK(salon.run("due " + here).out == "nobody is due by 2026-12-08\n");
  // Of a pet that is there a visit cannot be read.
  put(salon.folder, "visits/rex/2026-11-10.toml", "date = \n");
  CHECK(salon.run("due " + here).out == "not everything can be read: see the messages\n");
  salon.run("due -o due.pdf " + here);
  const std::string page = run("pdftotext -raw " + salon.folder.path("due.pdf") + " -").out;
  CHECK(has(page, "A visit’s file cannot be read"));
  CHECK_FALSE(has(page, "Nobody"));
  // Booked it is, and of its visits nothing is known.
  fs::remove(salon.folder.path("visits/rex/2026-11-20.toml"));
  put(salon.folder, "days/2026-11-24.toml",
      "date = 2026-11-24\n[[booking]]\nat = 09:00:00\npet = \"rex\"\n");
  const auto booked = salon.run("due " + here);
  CHECK(has(booked.out, "booked; not all visits can be read"));
  CHECK_FALSE(has(booked.out, "no groom on file"));
  CHECK_FALSE(has(salon.run("day 2026-11-24 --format text -o - " + here).out, "No groom on file"));
  // Where there is nobody at all, only that is said.
  const SmallSalon none{{"salon.toml", "[salon]\nname = \"New\"\n"}};
  CHECK(none.run("due " + here).out == "");
}

TEST_CASE("expiring lists vaccinations by their day", "[front-desk]") {
  const Json rows = asked("expiring");
  const auto nefeli = std::ranges::find_if(rows, [](const Json& row) {
    return row["pet"] == "nefeli" && row["vaccination"] == "rabies";
  });
  REQUIRE(nefeli != rows.end());
  CHECK((*nefeli)["day"] == "2026-11-20");  // three years of the calendar
  CHECK((*nefeli)["status"] == "expired after");
  CHECK(asked("expiring --within '2 years'").size() > rows.size());
}

TEST_CASE("find looks at names, owners, numbers and alerts, accents and case aside",
          "[front-desk]") {
  const auto only = [](const std::string& words) {
    const Json rows = asked("find " + words);
    return rows.size() == 1 ? rows[0]["pet"].get<std::string>() : std::to_string(rows.size());
  };
  CHECK(only("winifred") == "agnes");
  CHECK(only("LINDQVIST") == "bjarne");
  CHECK(only("lindqvíst") == "bjarne");
  CHECK(only("5550144") == "agnes");
  CHECK(only("0144") == "agnes");
  CHECK(only("weak heart") == "agnes");
  CHECK(only("nobody-at-all") == "0");
}

TEST_CASE("each answer is a page too, where a page is asked for", "[front-desk]") {
  const TemporaryFolder folder;
  for (const std::string question : {"due", "expiring", "find dog"}) {
    const std::string name = question.substr(0, question.find(' ')) + ".pdf";
    INFO(question);
    const auto ran = furnish(question + in_lantern + " -o " + folder.path(name));
    INFO(ran.err);
    CHECK(ran.status == 0);
    CHECK(ran.out == folder.path(name) + "\n");
    CHECK(pdf_faults(bytes_of(folder.path(name))) == std::vector<std::string>{});
    const std::string text = run("pdftotext -raw " + folder.path(name) + " - | tr '\n' ' '").out;
    // Numbers stand there, whatever cards show: the page says whose it is.
    CHECK(has(text, "staff only"));
    for (const Json& row : asked(question)) {
      const std::string contact = row["contact"];
      CHECK(has(text, contact.empty() ? "ask for one" : contact));
    }
  }
  CHECK(furnish("due --paper letter --language ar" + in_lantern + " --format svg -o -")
            .out.starts_with("<?xml"));
  CHECK(furnish("due" + in_lantern + " -o " + folder.path("due.txt")).out == "");
  CHECK(bytes_of(folder.path("due.txt")) == furnish("due" + in_lantern).out);
  CHECK(furnish("due" + in_lantern + " -o " + folder.path("due.docx")).status == 2);
  CHECK(furnish("due --json" + in_lantern + " -o " + folder.path("d.pdf")).status == 2);
  CHECK(furnish("find nobody-at-all --format pdf -o -" + in_lantern).status == 0);
}

TEST_CASE("a list of a whole salon goes on over further pages", "[front-desk]") {
  const auto ran = furnish("due --within '3 years' --paper A6 -o - --format pdf" + in_lantern);
  INFO(ran.err);
  REQUIRE(ran.status == 0);
  CHECK(PdfFile(ran.out).pages().size() > 1);
}

TEST_CASE("sheets of the day's bookings, in time order", "[front-desk]") {
  const TemporaryFolder folder;
  const auto ran =
      furnish("card --booked --salon " + lantern + " --on 2026-11-24 -o " + folder.path("") + "/");
  INFO(ran.err);
  CHECK(ran.status == 0);
  CHECK(ran.out.find("juniper") < ran.out.find("marlow"));
  CHECK(ran.out.find("marlow") < ran.out.find("gao"));
  // The day may be named; then it is the day of the sheets too.
  const auto named = furnish("card --booked 2026-11-24 --together --format pdf --salon " + lantern +
                             " -o " + folder.path("day.pdf"));
  CHECK(named.status == 0);
  const auto none = furnish("card --booked 2026-11-27 --salon " + lantern + " -o -");
  CHECK(none.status == 1);
  CHECK(has(none.err, "nothing is booked on 2026-11-27"));
  CHECK(furnish("card marlow --booked" + in_lantern).status == 2);
}

TEST_CASE("a booking for a pet that is not there is told, and the others are printed",
          "[front-desk]") {
  const TemporaryFolder folder;
  copy_sample("lantern-street", folder.path("salon"));
  put(folder, "salon/days/2026-11-25.toml",
      "date = 2026-11-25\n[[booking]]\nat = 10:30\npet = \"pipp\"\n[[booking]]\nat = 9:30\npet = "
      "\"dot\"\n");
  const auto ran = furnish("card --booked 2026-11-25 --salon " + folder.path("salon") + " -o " +
                           folder.path("out") + "/");
  CHECK(ran.status == 1);
  CHECK(has(ran.err, "did you mean 'pip'?"));
  CHECK(fs::exists(folder.path("out/dot-card.pdf")));
}

TEST_CASE("rename moves a pet and its visits, and nothing else", "[front-desk]") {
  const TemporaryFolder folder;
  copy_sample("lantern-street", folder.path("salon"));
  const std::string salon = folder.path("salon");
  const std::string pet = bytes_of(salon + "/pets/marlow.toml");
  put(folder, "salon/put-away/visits/marlow/2026-01-01.toml", "date = 2026-01-01\n");
  const auto ran = furnish("rename marlow barlow --salon " + salon);
  INFO(ran.err);
  CHECK(ran.status == 0);
  CHECK(bytes_of(salon + "/pets/barlow.toml") == pet);
  CHECK(fs::exists(salon + "/visits/barlow/2026-11-24.toml"));
  CHECK(fs::exists(salon + "/put-away/visits/barlow/2026-01-01.toml"));
  CHECK_FALSE(fs::exists(salon + "/pets/marlow.toml"));
  CHECK_FALSE(fs::exists(salon + "/visits/marlow"));
  // Bookings are a person's to change.
  CHECK(has(ran.err, "days/2026-11-24.toml"));
  CHECK(furnish("rename pip dot --salon " + salon).status == 1);
  CHECK(fs::exists(salon + "/pets/pip.toml"));
  CHECK(has(furnish("rename pipp spot --salon " + salon).err, "did you mean 'pip'?"));
  CHECK(furnish("rename pip ../pip --salon " + salon).status == 1);
}
}  // namespace furnish::test
