#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <sstream>

#include "app/program.h"

// What cannot go as the day is booked is said with every sheet about that pet.

namespace furnish::test {
namespace {
std::size_t count(const std::string& text, std::string_view part) {
  std::size_t found = 0;
  for (std::size_t at = 0; (at = text.find(part, at)) != std::string::npos; at += part.size()) {
    ++found;
  }
  return found;
}

/// A salon of three pets, each of which takes ninety minutes by its visit.
class Shop {
 public:
  Shop() {
    put(folder_, "salon.toml", "[salon]\nname = \"S\"\n");
    for (const std::string key : {"rex", "juno", "fern"}) {
      put(folder_, "pets/" + key + ".toml",
          "[pet]\nname = \"" + key + "\"\n[trim]\nvisit_every = \"8 weeks\"\n");
      put(folder_, "visits/" + key + "/2026-10-01.toml", "date = 2026-10-01\nminutes = 90\n");
    }
  }
  void day(const std::string& bookings, const std::string& date = "2026-11-24") {
    put(folder_, "days/" + date + ".toml", "date = " + date + "\n" + bookings);
  }
  std::string path(const std::string& name) const { return folder_.path(name); }
  ToolOutput run(const std::string& what, const std::string& options = {}) {
    return furnish(what + " --salon " + folder_.path("") + " --on 2026-11-24 " + options);
  }
  /// With the sheet sent where nothing of it stays.
  ToolOutput sheet(const std::string& what) { return run(what, "--format text -o -"); }

 private:
  TemporaryFolder folder_;
};

std::string booking(const std::string& pet, const std::string& at, const std::string& collect = {},
                    const std::string& groomer = {}) {
  std::string out = "[[booking]]\npet = \"" + pet + "\"\nat = " + at + ":00\n";
  if (!collect.empty()) out += "collect = " + collect + ":00\n";
  if (!groomer.empty()) out += "groomer = \"" + groomer + "\"\n";
  return out;
}
/// The words of a page that was given as text, without spaces, for lines end anywhere.
std::string without_spaces(const std::string& dump) {
  std::string text;
  std::istringstream lines(dump);
  for (std::string line; std::getline(lines, line);) {
    const auto begin = line.find('"'), end = line.rfind('"');
    if (begin < end) text += line.substr(begin + 1, end - begin - 1);
  }
  constexpr std::string_view spaces[] = {" ", "\u00A0", "\u202F", "\u2007"};
  for (const std::string_view space : spaces) {
    for (auto at = text.find(space); at != text.npos; at = text.find(space, at)) {
      text.erase(at, space.size());
    }
  }
  return text;
}

constexpr const char* sheets[] = {"card", "style", "note", "note --for owner", "care"};
}  // namespace

TEST_CASE("every sheet about a pet says what cannot go as it is booked", "[booked]") {
  Shop shop;
  shop.day(booking("rex", "09:00", "10:00", "Ines") + booking("juno", "10:00", "12:00", "Ines") +
           booking("fern", "12:00", "14:00", "Bo"));
  for (const std::string sheet : sheets) {
    INFO(sheet);
    const auto rex = shop.sheet(sheet + " rex"), juno = shop.sheet(sheet + " juno"),
               fern = shop.sheet(sheet + " fern");
    CHECK(rex.status == 0);
    CHECK(has(rex.err, "rex is booked from 09:00 to 10:00"));
    CHECK(has(rex.err, "Ines has rex and juno at once"));
    CHECK(juno.status == 0);
    CHECK(!has(juno.err, "rex is booked from"));
    CHECK(has(juno.err, "Ines has rex and juno at once"));
    CHECK(fern.status == 0);
    CHECK(!has(fern.err, "booked"));
  }
  CHECK(shop.run("card rex", "--strict -o -").status == 1);
  // What two pets share is told once in a run, and a day as it should be has no word.
  const auto all = shop.run("card", "--together -o -");
  CHECK(count(all.err, "at once") == 1);
  shop.day(booking("rex", "09:00", "10:30", "Ines") + booking("juno", "10:30", "12:00", "Ines"));
  CHECK(!has(shop.run("card", "--together -o -").err, "booked"));
}

/// What a page that knows of its bookings says of 8 weeks after 1 October.
constexpr const char* by_interval = "26November";
constexpr const char* in_the_dark = "notallbookingscanberead";

TEST_CASE("a pet that may be booked by a name that is not there has its sheet, without a next date",
          "[booked]") {
  Shop shop;
  shop.day(booking("rexx", "09:00") + booking("juno", "10:00"));
  for (const std::string sheet : sheets) {
    INFO(sheet);
    const auto rex = shop.sheet(sheet + " rex"), juno = shop.sheet(sheet + " juno"),
               fern = shop.sheet(sheet + " fern");
    CHECK(rex.status == 1);
    CHECK(has(rex.err, "no pet 'rexx'"));
    CHECK(has(rex.err, "did you mean 'rex'?"));
    CHECK(!rex.out.empty());
    CHECK_FALSE(has(without_spaces(rex.out), by_interval));
    // The others' sheets lack nothing; the fault is told all the same.
    CHECK(juno.status == 1);
    CHECK(has(juno.err, "no pet 'rexx'"));
    CHECK(!juno.out.empty());
    CHECK(!fern.out.empty());
    CHECK_FALSE(has(without_spaces(fern.out), in_the_dark));
  }
  const std::string card = without_spaces(shop.sheet("card rex").out);
  CHECK(has(card, "FromTuesday,24Novemberonnotallbookingscanberead"));
  CHECK(shop.run("plan rex").status == 1);
}

TEST_CASE("a fault in a day's file stops no sheet and is told once, with its place", "[booked]") {
  for (const char* date : {"2026-11-24", "2026-12-01"}) {  // the next visit is on every sheet too
    Shop shop;
    shop.day("[[booking]]\npet = \"rex\"\nat = 9\n" + booking("juno", "10:00"), date);
    for (const std::string sheet : sheets) {
      for (const std::string pet : {" rex", " juno", " fern"}) {
        INFO(sheet << pet << " with a fault on " << date);
        const auto ran = shop.sheet(sheet + pet);
        CHECK(ran.status == 1);  // never 0 where an error is told
        CHECK(has(ran.err, std::string(date) + ".toml:4"));
        CHECK(count(ran.err, "error:") == 1);
        CHECK(!ran.out.empty());
      }
    }
    const auto all = shop.run("card", "--together -o -");
    CHECK(all.status == 1);
    CHECK(count(all.err, "error:") == 1);
    CHECK(all.out.starts_with("%PDF"));
    CHECK(has(shop.run("card").err, "3 of 3; 3 with faults\n"));
    CHECK(shop.run("plan rex").status == 1);
    const auto started = shop.run("new visit rex");
    CHECK(started.status == 1);
    CHECK(std::filesystem::exists(shop.path("visits/rex/2026-11-24.toml")));
  }
  // What is past is nobody's matter any more.
  Shop shop;
  shop.day("[[booking]]\npet = \"rex\"\nat = 9\n", "2026-09-01");
  CHECK(shop.sheet("card rex").status == 0);
}

TEST_CASE("only the booking that has a fault is lost, and only its pet's next date is open",
          "[booked]") {
  Shop shop;
  shop.day("[[booking]]\npet = \"rex\"\nat = 9\n" + booking("juno", "10:00"), "2026-12-01");
  const std::string rex = without_spaces(shop.sheet("card rex").out);
  CHECK(has(rex, "FromTuesday,1Decemberonnotallbookingscanberead"));
  CHECK_FALSE(has(rex, by_interval));
  CHECK(has(without_spaces(shop.sheet("card juno").out), "1December(bookedat10:00)"));
  CHECK(has(without_spaces(shop.sheet("card fern").out), by_interval));
  // The owner is not told of files, and of no date.
  const std::string care = without_spaces(shop.sheet("care rex").out);
  CHECK(has(care, "Wecannotlookupthedatetoday"));
  CHECK_FALSE(has(care, by_interval));
  CHECK(has(shop.run("plan rex").out, "not all can be read from 2026-12-01 on"));
  // Who is perhaps booked is in the list all the same.
  const auto due = shop.run("due");
  CHECK(due.status == 1);
  CHECK(has(due.out, "not all bookings can be read from 2026-12-01"));
  CHECK(count(due.out, "2026-11-26") == 2);
  // Whose booking it is nobody knows where the name itself cannot be read.
  shop.day("[[booking]]\npet = \"rex\nat = 9:00\n" + booking("juno", "10:00"), "2026-12-01");
  CHECK(has(without_spaces(shop.sheet("card fern").out), in_the_dark));
  CHECK(has(without_spaces(shop.sheet("card juno").out), "1December(bookedat10:00)"));
}

TEST_CASE("a day of which nothing can be read leaves every next date open that may be later",
          "[booked]") {
  const auto faults = [](Shop& shop, const std::string& how) {
    if (how == "no TOML") shop.day("[[booking]\npet = \"rex\"\n", "2026-12-01");
    if (how == "unreadable") std::filesystem::create_directories(shop.path("days/2026-12-01.toml"));
  };
  for (const std::string how : {"no TOML", "unreadable"}) {
    INFO(how);
    Shop shop;
    faults(shop, how);
    shop.day(booking("juno", "10:00"), "2026-11-30");
    const auto rex = shop.sheet("card rex");
    CHECK(rex.status == 1);
    CHECK(has(rex.err, "days/2026-12-01.toml"));
    CHECK(count(rex.err, "error:") == 1);
    CHECK(has(without_spaces(rex.out), "FromTuesday,1Decemberonnotallbookingscanberead"));
    const auto juno = shop.sheet("card juno");  // it comes before that
    CHECK(juno.status == 1);
    CHECK(has(without_spaces(juno.out), "30November(bookedat10:00)"));
  }
  Shop shop;
  std::filesystem::create_symlink("days", shop.path("days"));
  const auto rex = shop.sheet("card rex");
  CHECK(rex.status == 1);
  CHECK(has(rex.err, "days: error: cannot be read: "));
  CHECK(has(without_spaces(rex.out), "FromTuesday,24Novemberonnotallbookingscanberead"));
  // Absent is neither.
  CHECK(Shop().sheet("card rex").status == 0);
}

TEST_CASE("the sheet of a day with a fault has its other bookings, and says which it lacks",
          "[booked]") {
  Shop shop;
  shop.day("[[booking]]\npet = \"rex\"\nat = 9\n" + booking("juno", "10:00", "12:00", "Ines") +
           "[[booking]]\npet = \"ghost\nat = 11:00:00\n");
  for (const std::string what : {"day", "day --week"}) {
    INFO(what);
    const auto day = shop.sheet(what);
    CHECK(day.status == 1);
    CHECK(count(day.err, "error:") == 2);
    const std::string text = without_spaces(day.out);
    CHECK(has(text, "juno"));
    CHECK(has(text, "2bookingsofthisdaycannotberead:rex,line4;line11."));
  }
  // Nobody is forgotten in the cards of the day either.
  const auto cards = shop.run("card --booked", "--together -o -");
  CHECK(cards.status == 1);
  CHECK(count(cards.err, "error:") == 2);
  CHECK(shop.run("check").status == 1);
}
}  // namespace furnish::test
