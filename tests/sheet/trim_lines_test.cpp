#include "sheet/trim_lines.h"

#include <catch2/catch.hpp>

#include "sheet/desk.h"

namespace furnish {
namespace {
using test::desk;

/// "places: work; note", a line each, "*" before what differs from the style.
std::string lines_of(const std::string& trim) {
  auto table = desk("[pet]\nname = \"Rex\"\n[trim]\n" + trim);
  const test::Kennel kennel = table.kennel();
  std::string out;
  for (const TrimLine& line : trim_lines(kennel.pet.trim, table.voice())) {
    out += (line.differs ? "* " : "") + line.places + ": " + line.work;
    out += (line.note.empty() ? "" : "; " + line.note) + "\n";
  }
  return out;
}
}  // namespace

TEST_CASE("places of equal work are one line, in order of their first place", "[trim-lines]") {
  CHECK(lines_of("ears = { shears = \"thinning\", leave = \"20 mm\" }\n"
                 "chest = { blade = \"7F\" }\n"
                 "tail = { shears = \"thinning\", leave = \"20 mm\" }\n") ==
        "* ears and tail: thinning shears, 20\u202Fmm\n* chest: #7F\n");
}

TEST_CASE("a note, a length or a lay of its own parts what is else alike", "[trim-lines]") {
  CHECK(lines_of("ears = { shears = \"thinning\", leave = \"20 mm\" }\n"
                 "tail = { shears = \"thinning\", leave = \"25 mm\" }\n"
                 "chest = { shears = \"thinning\", leave = \"20 mm\", note = \"soft\" }\n") ==
        "* ears: thinning shears, 20\u202Fmm\n"
        "* chest: thinning shears, 20\u202Fmm; soft\n"
        "* tail: thinning shears, 25\u202Fmm\n");
}

TEST_CASE("a group keeps the name that the file wrote", "[trim-lines]") {
  CHECK(lines_of("body = { blade = \"4F\" }\n") == "* body: #4F\n");
  // What is more specific leaves the group, and the rest of it keeps the name.
  CHECK(lines_of("body = { blade = \"4F\" }\nneck = { blade = \"10\" }\n") ==
        "* neck: #10\n* body: #4F\n");
}

TEST_CASE("sides are named by one of the pair", "[trim-lines]") {
  CHECK(lines_of("\"left hock\" = { blade = \"10\" }\n\"right hock\" = { brush = true }\n") ==
        "* left hock: #10\n* right hock: brush, no cut\n");
}

TEST_CASE("each kind of tool in the trade's words", "[trim-lines]") {
  CHECK(lines_of("back = { comb = \"1/2 in\", over = \"30\" }\n") ==
        "* back: ½\u202Fin comb over #30\n");
  CHECK(lines_of("back = { comb = \"19 mm\" }\n").starts_with("* back: 19\u202Fmm comb over #"));
  CHECK(lines_of("back = { blade = \"5F\", lay = \"against\" }\n") ==
        "* back: #5F, against the lay\n");
  CHECK(lines_of("back = { blade = \"5F\", lay = \"across\" }\n") ==
        "* back: #5F, across the lay\n");
  CHECK(lines_of("tail = { brush = true, leave = \"80 mm\" }\n") ==
        "* tail: brush, no cut, 80\u202Fmm\n");
  for (const char* shears : {"straight", "curved", "thinning", "blending"}) {
    CHECK(lines_of(std::string("tail = { shears = \"") + shears + "\", leave = \"8 mm\" }\n") ==
          std::string("* tail: ") + shears + " shears, 8\u202Fmm\n");
  }
}

TEST_CASE("what a style says differs from nothing", "[trim-lines]") {
  const std::string house = lines_of("style = \"smooth-tidy\"\n");
  CHECK_FALSE(house.empty());
  CHECK(house.find('*') == std::string::npos);
}
}  // namespace furnish
