#include <catch2/catch.hpp>

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
      put(folder_, "pets/" + key + ".toml", "[pet]\nname = \"" + key + "\"\n");
      put(folder_, "visits/" + key + "/2026-10-01.toml", "date = 2026-10-01\nminutes = 90\n");
    }
  }
  void day(const std::string& bookings, const std::string& date = "2026-11-24") {
    put(folder_, "days/" + date + ".toml", "date = " + date + "\n" + bookings);
  }
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

TEST_CASE("a pet that is booked by a name that is not there has no sheet without its line",
          "[booked]") {
  Shop shop;
  shop.day(booking("rexx", "09:00") + booking("juno", "10:00"));
  for (const std::string sheet : sheets) {
    INFO(sheet);
    const auto rex = shop.sheet(sheet + " rex"), juno = shop.sheet(sheet + " juno");
    CHECK(rex.status == 1);
    CHECK(has(rex.err, "no pet 'rexx'"));
    CHECK(has(rex.err, "did you mean 'rex'?"));
    CHECK(rex.out.empty());
    // The other's sheet lacks nothing; the fault is told all the same.
    CHECK(juno.status == 1);
    CHECK(has(juno.err, "no pet 'rexx'"));
    CHECK(!juno.out.empty());
  }
  CHECK(shop.run("plan rex").status == 1);
  CHECK(shop.run("new visit rex").status == 1);
}

TEST_CASE("a day that cannot be read makes no sheet, and never ends well", "[booked]") {
  for (const char* date : {"2026-11-24", "2026-12-01"}) {  // the next visit is on every sheet too
    Shop shop;
    shop.day("[[booking]]\npet = \"rex\"\nat = 9\n", date);
    for (const std::string sheet : sheets) {
      INFO(sheet << " with a fault on " << date);
      const auto ran = shop.sheet(sheet + " rex");
      CHECK(ran.status == 1);
      CHECK(has(ran.err, std::string(date) + ".toml:4"));
      CHECK(ran.out.empty());
    }
    const auto all = shop.run("card", "--together -o -");
    CHECK(all.status == 1);
    CHECK(all.out.empty());
    CHECK(count(all.err, "error:") == 1);
    CHECK(shop.run("plan rex").status == 1);
    CHECK(shop.run("new visit rex").status == 1);
  }
  // What is past is nobody's matter any more.
  Shop shop;
  shop.day("[[booking]]\npet = \"rex\"\nat = 9\n", "2026-09-01");
  CHECK(shop.sheet("card rex").status == 0);
}
}  // namespace furnish::test
