#include <catch2/catch.hpp>

#include "spec/said.h"
#include "spec/scan.h"

// Input that is no honest slip: encodings, sizes, depths. What is refused is told with a place
// where there is one.

namespace furnish::test {
namespace {
const std::string good = "[pet]\nname = \"Rex\"\nbreed = \"spitz\"\n";

std::string said_of(const std::string& text) {
  Desk desk;
  const auto pet = desk.pet(text);
  CHECK(pet.has_value() == !desk.sink().has_errors());
  return desk.said();
}

std::string repeated(std::string_view part, std::size_t times) {
  std::string out;
  for (std::size_t i = 0; i < times; ++i) out += part;
  return out;
}

std::string with_line_ends(std::string text, std::string_view line_end) {
  for (std::size_t at = text.find('\n'); at != std::string::npos;
       at = text.find('\n', at + line_end.size())) {
    text.replace(at, 1, line_end);
  }
  return text;
}
}  // namespace

TEST_CASE("a byte order mark and CRLF are taken, and places stay right", "[encoding]") {
  CHECK(said_of("\xEF\xBB\xBF" + good) == "");
  CHECK(said_of(with_line_ends(good, "\r\n")) == "");
  CHECK(said_of("\xEF\xBB\xBF" + with_line_ends(good, "\r\n")) == "");
  const std::string fault = "pet.nmae = \"Rex\"\r\npet.name = \"Rex\"\r\n";
  CHECK(said_of("\xEF\xBB\xBF" + fault) ==
        "pets/rex.toml:1:5: error: no key 'nmae' in [pet]\n"
        "  pet.nmae = \"Rex\"\n"
        "      ^^^^\n"
        "  hint: did you mean 'name'?\n");
  CHECK(said_of("\xEF\xBB\xBF") ==
        "pets/rex.toml: error: is empty; a pet needs at least [pet] with a name\n");
}

TEST_CASE("bytes that are not UTF-8 are refused at their place", "[encoding]") {
  CHECK(said_of("[pet]\nname = \"R\xE9x\"\n") ==
        "pets/rex.toml:2:10: error: byte 0xE9 is not UTF-8\n"
        "  name = \"R\xE9x\"\n"
        "           ^\n"
        "  hint: save the file again, with UTF-8 as its encoding\n");
  CHECK(said_of("\xFF\xFE[\0p\0") ==
        "pets/rex.toml: error: is UTF-16 text; UTF-8 is read\n"
        "  hint: save the file again, with UTF-8 as its encoding\n");
}

TEST_CASE("control characters are refused at their place", "[encoding]") {
  CHECK_THAT(said_of(good + std::string("# a\0b\n", 6)),
             Catch::StartsWith("pets/rex.toml:4:4: error: control character U+0000 in the text\n"));
  // An old line end, and the two signs that count as line ends elsewhere.
  CHECK_THAT(said_of("[pet]\rname = \"Rex\"\r"), Catch::Contains("control character U+000D"));
  CHECK_THAT(said_of(good + "# a\x0B\n"), Catch::Contains("rex.toml:4:4: error: control"));
  CHECK_THAT(said_of(good + "# a\x7F\n"), Catch::Contains("U+007F"));
  // U+2028 and U+0085 are no line ends in TOML: the fault after them is in line 5.
  CHECK_THAT(said_of(good + "# a\u2028b\u0085\nnaem = 1\n"), Catch::Contains("rex.toml:5:1"));
}

TEST_CASE("over 64 KiB is refused with that bound", "[bounds]") {
  const std::string under = good + "#" + std::string(Files::largest - good.size() - 1, 'x');
  REQUIRE(under.size() == Files::largest);
  CHECK(said_of(under) == "");
  CHECK(said_of(under + "x") ==
        "pets/rex.toml: error: has 65537 bytes; at most 65536 (64 KiB) are read\n");
  // Through a file, it is not even read.
  Desk desk(FileMap{{"pets/big.toml", under + "x"}});
  CHECK_FALSE(read_pet(desk.context(), "pets/big.toml", nullptr, desk.styles()));
  CHECK(desk.said() ==
        "pets/big.toml: error: cannot be read: has 65537 bytes; at most 65536 (64 KiB) are read\n");
}

TEST_CASE("nesting 10 000 deep is refused, by brackets and by dots", "[depth]") {
  CHECK_THAT(said_of(good + "a = " + repeated("[", 10'000) + "\n"),
             Catch::Contains("rex.toml:4:37: error: brackets nested more than 32 deep"));
  CHECK_THAT(said_of(good + "a = " + repeated("{a=", 10'000) + "\n"),
             Catch::Contains("brackets nested more than 32 deep"));
  CHECK_THAT(said_of(good + repeated("a.", 10'000) + "b = 1\n"),
             Catch::Contains("rex.toml:4:130: error: more than 64 dots in one line"));
  CHECK_THAT(said_of(good + "[" + repeated("a.", 10'000) + "b]\n"),
             Catch::Contains("more than 64 dots in one line"));
  CHECK_THAT(said_of(good + "a = [\n" + repeated("[\n", 10'000)),
             Catch::Contains("brackets nested more than 32 deep"));
  // Within both bounds, but one under the other.
  CHECK_THAT(said_of(good + "[" + repeated("a.", 60) + "a]\n" + repeated("b.", 60) + "b = 1\n"),
             Catch::Contains("tables nested more than 64 deep"));
  // Dots and brackets in strings and comments do not count.
  CHECK(said_of(good + "colour = \"" + repeated(".[", 200) + "\" # " + repeated("[.", 200) +
                "\n") == "");
  CHECK(said_of(good + "colour = \"\\\"" + repeated(".", 200) + "\"\n") == "");
  CHECK(said_of(good + "colour = '" + repeated(".", 200) + "\"'\n") == "");
  CHECK(said_of(good + "colour = '''" + repeated("'.", 200) + "''''\n") == "");
}

TEST_CASE("files that cannot be read", "[files]") {
  Desk desk;
  CHECK_FALSE(read_pet(desk.context(), "pets/none.toml", nullptr, desk.styles()));
  CHECK(desk.said() == "pets/none.toml: error: cannot be read: No such file or directory\n");
  const DiskFiles disk;
  SourceSet sources;
  DiagnosticSink sink;
  CHECK_FALSE(read_salon({disk, sources, sink}, FURNISH_SOURCE_DIR));
  CHECK(said(sink, sources) == FURNISH_SOURCE_DIR
        ": error: cannot be read: is a folder, not a file\n");
}

TEST_CASE("a name of 500 characters is taken, whatever their bytes", "[bounds]") {
  CHECK(said_of("[pet]\nname = \"" + repeated("犬", 500) + "\"\n") == "");
  CHECK_THAT(said_of("[pet]\nname = \"" + repeated("犬", 501) + "\"\n"),
             Catch::Contains("name has 501 characters; at most 500 fit"));
}

TEST_CASE("numbers that are none are refused wherever a number may stand", "[numbers]") {
  for (const char* number : {"nan", "-nan", "inf", "-inf", "1e400", "99999999999999999999"}) {
    Desk desk;
    INFO(number);
    const auto salon = desk.salon(std::string("[time]\nbase = ") + number + "\n");
    REQUIRE(salon);
    CHECK(salon->unknown(SalonPart::time));
    CHECK_FALSE(desk.visit(std::string("date = 2026-11-24\nminutes = ") + number + "\n"));
  }
  Desk desk;
  desk.salon("[blends]\nratio = nan\n");
  CHECK(desk.said() ==
        "salon.toml:2:9: error: ratio: expected a number, found nan\n"
        "  ratio = nan\n"
        "          ^^^\n");
}

TEST_CASE("a fault of syntax that hides what follows ends the reading", "[syntax]") {
  // The heading is lost, so that its keys would seem to be those of the table before.
  CHECK(said_of("[pet]\nname = \"Rex\"\n[trim\nbak = { blade = \"10\" }\ncoat = double\n") ==
        "pets/rex.toml:3:1: error: a heading without its closing bracket\n"
        "  [trim\n"
        "  ^^^^^\n"
        "  hint: write [trim]\n");
  // So is the list that goes on in the next line.
  CHECK_THAT(said_of("[pet]\nname = Rex\n[preferences]\nlikes = [\"a\", b,\n\"c\"]\nx = 1\n"),
             Catch::Contains(":2:8: error: ") && Catch::Contains(":4:15: error: ") &&
                 !Catch::Contains(":5:") && !Catch::Contains(":6:"));
}
TEST_CASE("after twenty faults of TOML itself it is said that reading stops", "[syntax]") {
  std::string text = good;
  for (int i = 0; i < 40; ++i) text += "x" + std::to_string(i) + " = = 1\n";
  const std::string said = said_of(text);
  CHECK(
      said.find("pets/rex.toml:23:1: error: 20 faults of TOML itself: the rest of the file is not "
                "read\n") != std::string::npos);
  CHECK(said.find(":24:") == std::string::npos);
}
}  // namespace furnish::test
