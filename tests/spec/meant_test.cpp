#include <catch2/catch.hpp>

#include "spec/said.h"
#include "spec/writer.h"

// What a person means is taken where it cannot be meant otherwise: both spellings read as the same.

namespace furnish::test {
namespace {
using namespace std::chrono_literals;

/// What is read, as the writer writes it.
std::string pet_of(const std::string& text) {
  Desk desk;
  const auto pet = desk.pet("[pet]\nname = \"Rex\"\n" + text);
  CHECK(desk.said() == "");
  return pet ? pet_toml(*pet) : "";
}

void same(const std::string& meant, const std::string& plain) {
  INFO(meant);
  const std::string read = pet_of(meant);
  CHECK_FALSE(read.empty());
  CHECK(read == pet_of(plain));
  // Not only because neither says anything.
  CHECK(read != pet_of(""));
}

std::optional<TimeOfDay> at(const std::string& value) {
  Desk desk;
  const auto day = desk.day("date = 2026-11-24\n[[booking]]\nat = " + value + "\npet = \"rex\"\n");
  CHECK(desk.said() == "");
  if (!day) return std::nullopt;
  return day->bookings.front().at;
}
}  // namespace

TEST_CASE("units in words, in capitals, cut short", "[meant]") {
  same("weight = \"19.4 lbs\"", "weight = \"19.4 lb\"");
  same("weight = \"4.6 KG\"", "weight = \"4.6 kg\"");
  same("[trim]\nvisit_every = \"10 wks\"", "[trim]\nvisit_every = \"10 weeks\"");
  same("[handling]\nrest_every = \"5 minutes\"", "[handling]\nrest_every = \"5 min\"");
  same("[trim]\nhocks = { comb = \"1/2 inch\" }", "[trim]\nhocks = { comb = \"1/2 in\" }");
}

TEST_CASE("a word where a list is asked, a list where one word is", "[meant]") {
  same("[preferences]\nlikes = \"full breeches\"", "[preferences]\nlikes = [\"full breeches\"]");
  same("[preferences]\nlikes = \"tail, ears\"", "[preferences]\nlikes = [\"tail, ears\"]");
  same("breed = [\"spitz\"]", "breed = \"spitz\"");
  same("coat = [\"curly\"]", "coat = \"curly\"");
  same("[health]\nconditions = \"blind, deaf\"", "[health]\nconditions = [\"blind\", \"deaf\"]");
  same("[[alert]]\nlevel = \"notice\"\ntext = \"x\"\navoid = \"ears, left hock\"",
       "[[alert]]\nlevel = \"notice\"\ntext = \"x\"\navoid = [\"ears\", \"left hock\"]");
}

TEST_CASE("numbers of blades, words with capitals, yes and no, dates in quotes", "[meant]") {
  same("[trim]\npads = { blade = 30 }", "[trim]\npads = { blade = \"30\" }");
  same("[trim]\nhocks = { comb = \"1/2 in\", over = 30 }",
       "[trim]\nhocks = { comb = \"1/2 in\", over = \"30\" }");
  same("coat = \"Double\"", "coat = \"double\"");
  same("[[alert]]\nlevel = \"WARNING\"\ntext = \"x\"",
       "[[alert]]\nlevel = \"warning\"\ntext = \"x\"");
  same("[bath]\nnone = \"yes\"", "[bath]\nnone = true");
  same("born = \"2021-04-09\"", "born = 2021-04-09");
}

TEST_CASE("places by the words of the trade", "[meant]") {
  const std::string blade = " = { blade = \"10\" }\n";
  for (const auto& [meant, plain] : {std::pair<std::string, std::string>{"bum", "rump"},
                                     {"\"hind legs\"", "rear-legs"},
                                     {"paws", "feet"},
                                     {"\"left paw\"", "\"left foot\""},
                                     {"topknot", "crown"}}) {
    Desk one, other;
    const auto a = one.pet("[pet]\nname = \"Rex\"\n[trim]\n" + meant + blade);
    const auto b = other.pet("[pet]\nname = \"Rex\"\n[trim]\n" + plain + blade);
    INFO(meant);
    CHECK(one.said() == "");
    REQUIRE(a);
    REQUIRE(b);
    REQUIRE(a->trim.size() == 1);
    CHECK(a->trim.front().place == b->trim.front().place);
  }
  Desk face;
  const auto pet =
      face.pet("[pet]\nname = \"Rex\"\n[trim]\nface" + blade + "muzzle = { brush = true }");
  REQUIRE(pet);
  REQUIRE(pet->trim.size() == 2);
  CHECK(std::holds_alternative<Brush>(pet->trim.front().entry.tool));
  CHECK(pet->trim.back().place == Place{Region::cheeks, Side::both});
  // No tool on the face is none at the eyes.
  Desk alert;
  const auto wary = alert.pet(
      "[pet]\nname = \"Rex\"\n[[alert]]\nlevel = \"notice\"\ntext = \"x\"\navoid = \"face\"");
  REQUIRE(wary);
  CHECK(wary->alerts.front().avoid.size() == 3);
}

TEST_CASE("times of day, in quotes or not, with seconds or not", "[meant]") {
  for (const char* value : {"09:30:00", "09:30", "9:30", "\"09:30\"", "\"9:30\"", "\"9:30 am\"",
                            "\"09:30:00\"", "9:30 # early"}) {
    INFO(value);
    CHECK(at(value) == 9h + 30min);
  }
  CHECK(at("\"2:30 pm\"") == 14h + 30min);
  CHECK(at("\"12:05 AM\"") == 5min);
  // Places behind such a time are those of the person's text.
  Desk desk;
  desk.day("date = 2026-11-24\nbooking = [{ at = 9:30, pte = \"rex\", pet = \"rex\" }]\n");
  CHECK(desk.said() ==
        "days/2026-11-24.toml:2:25: error: no key 'pte' in [[booking]]\n"
        "  booking = [{ at = 9:30, pte = \"rex\", pet = \"rex\" }]\n"
        "                          ^^^\n"
        "  hint: did you mean 'pet'?\n");
  // What looks like one in words and remarks stays as it is.
  Desk words;
  const auto day = words.day(
      "date = 2026-11-24 # at = 9:30\n[[booking]]\nat = 9:30\npet = \"rex\"\nnote = \"at = "
      "9:30\"\n");
  REQUIRE(day);
  CHECK(day->bookings.front().note == "at = 9:30");
}

TEST_CASE("what people call conditions, days, dilutions and blades", "[meant]") {
  same("[health]\nconditions = [\"epilepsy\", \"heart murmur\"]",
       "[health]\nconditions = [\"seizures\", \"heart disease\"]");
  same("[trim]\nbelly = { blade = \"7FC\" }", "[trim]\nbelly = { blade = \"7F\" }");
  same("[[alert]]\nlevel = \"notice\"\ntext = \"x\"\navoid = \"skirt\"",
       "[[alert]]\nlevel = \"notice\"\ntext = \"x\"\navoid = [\"belly\"]");
  same("[bath]\nshampoo = { name = \"oat\", dilution = \"1 to 10\" }",
       "[bath]\nshampoo = { name = \"oat\", dilution = \"1:10\" }");
  Desk desk;
  const auto salon = desk.salon("[salon]\nclosed = [\"Sun\", \"thurs\"]\n");
  CHECK(desk.said() == "");
  REQUIRE(salon);
  CHECK(salon->closed ==
        std::vector<std::chrono::weekday>{std::chrono::Sunday, std::chrono::Thursday});
}

TEST_CASE("what cannot be meant is told what to write, and no blade is made up", "[meant]") {
  const auto hint = [](const std::string& text) {
    Desk desk;
    CHECK_FALSE(desk.pet("[pet]\nname = \"Rex\"\n" + text));
    const std::string said = desk.said();
    const std::size_t at = said.find("hint: ");
    return at == std::string::npos ? "" : said.substr(at + 6, said.find('\n', at) - at - 6);
  };
  CHECK(hint("[trim]\nlegs = \"1/2 in comb\"") == "write { comb = \"1/2 in\", over = \"30\" }");
  CHECK(hint("[trim]\nbody = \"7F\"") == "write { blade = \"7F\" }");
  CHECK(hint("[trim]\nears = \"long, tidy\"") == "write it under [finish]");
  CHECK(hint("[trim]\nhead = \"round\"").starts_with("write { brush = true } or the tool"));
  CHECK(hint("weighed = 2011") == "write 2011-07-01 or the day itself, if it is known");
  CHECK(hint("born = \"March 2021\"") == "write \"2021-03\"");
  CHECK(hint("born = 2021-03") == "write \"2021-03\"");
  CHECK(hint("born = \"24 Nov 2019\"") == "write 2019-11-24");
  CHECK(hint("born = \"03/04/2019\"") == "");
  CHECK(hint("[owner]\nvet = \"Weir Vets\"") == "write { name = \"Weir Vets\" }");
  CHECK(hint("[owner]\ntel = \"555\"") == "its key is phone");
  CHECK(hint("tel = \"555\"") == "its key is phone: write it under [owner]");
  CHECK(hint("[trim]\nevery = \"6 weeks\"") == "its key is visit_every");
}

TEST_CASE("a booking's hour with a point, or under another name, is told how it is written",
          "[meant]") {
  const auto said = [](const std::string& line) {
    Desk desk;
    const auto day = desk.day("date = 2026-11-24\n[[booking]]\npet = \"rex\"\n" + line);
    REQUIRE(day);
    CHECK(day->bookings.empty());
    CHECK(day->unread.size() == 1);
    return desk.said();
  };
  CHECK(said("at = 9.30").find("hint: write 09:30:00") != std::string::npos);
  CHECK(said("at = 9.75").find("hint: write 0") == std::string::npos);
  CHECK(said("time = 10:00").find("hint: its key is at") != std::string::npos);
  CHECK(at("\"11am\"") == at("11:00:00"));
}
}  // namespace furnish::test
