#include <catch2/catch.hpp>

#include <filesystem>

#include "app/program.h"
#include "app/promised.h"

// Which visit a sheet is about.

namespace furnish::test {
namespace {
/// The demo salon, with a pet of two visits on the demo's day.
struct Twice {
  TemporaryFolder folder;
  Twice() {
    put(folder, "salon/salon.toml", "[salon]\nname = \"Demo\"\n");
    put(folder, "salon/pets/rex.toml",
        "[pet]\nname = \"Rex\"\ncoat = \"smooth\"\n[trim]\nvisit_every = \"8 weeks\"\n");
    put(folder, "salon/visits/rex/2026-11-24.toml",
        "date = 2026-11-24\nunfinished = false\ngroomer = \"Morning\"\nnext = 2027-01-05\n");
    put(folder, "salon/visits/rex/2026-11-24-2.toml",
        "date = 2026-11-24\nunfinished = false\ngroomer = \"Evening\"\nnext = 2026-12-15\n");
    put(folder, "salon/visits/rex/2026-11-24-10.toml",
        "date = 2026-11-24\nunfinished = false\ngroomer = \"Night\"\nnext = 2026-12-20\n");
  }
  ToolOutput run(const std::string& what, const std::string& day = "2026-11-24") const {
    return furnish(what + " rex --salon " + folder.path("salon") + " --on " + day);
  }
  std::string text(const std::string& file) const {
    return test::run("pdftotext -raw " + folder.path("salon/sheets/" + file) + " -").out;
  }
};
bool has(const std::string& text, const char* what) {
  return text.find(what) != std::string::npos;
}
}  // namespace

TEST_CASE("visits of one day follow each other by their numbers", "[note]") {
  const Twice salon;
  REQUIRE(salon.run("note").status == 0);
  CHECK(has(salon.text("rex-2026-11-24-10-note.pdf"), "Night"));
  REQUIRE(salon.run("note --visit 2026-11-24-2").status == 0);
  CHECK(has(salon.text("rex-2026-11-24-2-note.pdf"), "Evening"));
  REQUIRE(salon.run("note --visit 2026-11-24-1").status == 0);
  CHECK(has(salon.text("rex-2026-11-24-note.pdf"), "Morning"));
  CHECK(has(salon.run("plan").out, "2026-12-20"));
  CHECK(salon.run("note --visit 2026-11-24-x").status == 2);
  CHECK(salon.run("note --visit 2026-11-24-3").status == 1);
}

TEST_CASE("a care sheet that is printed again days later is the same visit's", "[care]") {
  const Twice salon;
  REQUIRE(salon.run("care", "2026-11-24").status == 0);
  const std::string entry = bytes_of(salon.folder.path("salon/sheets/rex-care.ics"));
  CHECK(has(entry, "DTSTART;VALUE=DATE:20261220"));
  REQUIRE(salon.run("care", "2026-11-30").status == 0);
  // What is to be done is told from the day of print.
  const std::string again = salon.text("rex-care.pdf");
  CHECK(has(again, "30 November 2026"));
  CHECK(has(again, "Visit of 24 November 2026"));
  // A later version of the same entry: it differs in what says so, and in the seal.
  const std::string later = bytes_of(salon.folder.path("salon/sheets/rex-care.ics"));
  CHECK(later.substr(later.find("DTSTART")) == entry.substr(entry.find("DTSTART")));
  CHECK(has(later, "SEQUENCE:6"));
  CHECK(has(later, "DTSTAMP:20261130T000000Z"));
  // Once that day has passed and nothing is booked, the page says so and there is no entry.
  const std::string to = salon.folder.path("late.pdf");
  REQUIRE(salon.run("care -o " + to, "2026-12-21").status == 0);
  const std::string late = test::run("pdftotext -raw " + to + " -").out;
  CHECK(has(late, "21 December 2026"));
  CHECK(has(late, "Visit of 24 November 2026"));
  CHECK(has(late, "The visit was due on Sunday, 20 December. Please call us."));
  CHECK_FALSE(std::filesystem::exists(salon.folder.path("late.ics")));
  // An earlier visit's page is a copy: it names the day that was agreed then.
  REQUIRE(salon.run("care --visit 2026-11-24-2", "2026-12-02").status == 0);
  CHECK(has(bytes_of(salon.folder.path("salon/sheets/rex-care.ics")), "20261215"));
  REQUIRE(salon.run("care --visit 2026-11-24-2 -o " + to, "2026-12-21").status == 0);
  CHECK_FALSE(std::filesystem::exists(salon.folder.path("late.ics")));
}

TEST_CASE("a booked pet that was never here has one entry, on whatever day it is printed",
          "[care]") {
  const Twice salon;
  put(salon.folder, "salon/pets/new.toml", "[pet]\nname = \"New\"\ncoat = \"smooth\"\n");
  put(salon.folder, "salon/days/2026-12-08.toml",
      "date = 2026-12-08\n[[booking]]\nat = 09:00:00\npet = \"new\"\n");
  const auto entry = [&](const std::string& day) {
    const auto ran = furnish("care new --salon " + salon.folder.path("salon") + " --on " + day +
                             " -o " + salon.folder.path(day + ".pdf"));
    INFO(ran.err);
    REQUIRE(ran.status == 0);
    return bytes_of(salon.folder.path(day + ".ics"));
  };
  const auto line = [](const std::string& text, const char* name) {
    const auto from = text.find(name);
    REQUIRE(from != std::string::npos);
    return text.substr(from, text.find('\r', from) - from);
  };
  const std::string one = entry("2026-11-24"), other = entry("2026-11-30");
  INFO(one << other);
  CHECK(has(one, "DTSTART:20261208T090000"));
  CHECK(line(one, "UID:") == line(other, "UID:"));
  CHECK(line(one, "SEQUENCE:") < line(other, "SEQUENCE:"));
}

TEST_CASE("a visit's file with faults stops what is about visits, and counts everywhere",
          "[note][care]") {
  const Twice salon;
  put(salon.folder, "salon/visits/rex/2026-11-24-2.toml", "date = 2026-11-24\nwieght = \"9 kg\"\n");
  for (const char* command : {"note", "note --for owner", "care", "new visit"}) {
    const auto ran = salon.run(command);
    INFO(command << "\n" << ran.err);
    CHECK(ran.status == 1);
    CHECK(ran.out == "");
    CHECK(has(ran.err, "did you mean 'weight'?"));
    CHECK_FALSE(has(ran.err, "has no visit"));
  }
  CHECK_FALSE(std::filesystem::exists(salon.folder.path("salon/sheets")));
  // A card is not about visits: it is made, and the status says that something is wrong.
  const auto card = salon.run("card");
  CHECK(card.status == 1);
  CHECK(has(card.out, "rex-card.pdf"));
}

TEST_CASE("the name of the output says its format, unless an option does", "[card]") {
  const Twice salon;
  const std::string to = salon.folder.path("");
  for (const auto& [name, begins] : {std::pair("/a.png", "\x89PNG"), std::pair("/a.svg", "<?xml"),
                                     std::pair("/a.pdf", "%PDF"), std::pair("/a", "%PDF")}) {
    REQUIRE(salon.run("card -o " + to + name).status == 0);
    CHECK(bytes_of(to + name).starts_with(begins));
  }
  REQUIRE(salon.run("card --format pdf -o " + to + "/b.png").status == 0);
  CHECK(bytes_of(to + "/b.png").starts_with("%PDF"));
}
}  // namespace furnish::test
