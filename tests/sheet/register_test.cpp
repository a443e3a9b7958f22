#include "sheet/register.h"

#include <catch2/catch.hpp>

#include "sheet/book_tabs.h"

namespace furnish::test {

// Letters and order as CLDR has them (index characters and collation of each language).
TEST_CASE("a name stands under its language's letter", "[book]") {
  const NameRegister spanish("es"), german("de"), english("en-GB"), arabic("ar");
  CHECK(spanish.letter("Ñandú") == "Ñ");
  CHECK(spanish.letter("Álex") == "A");
  CHECK(german.letter("Öttel") == "O");
  CHECK(english.letter("marlow") == "M");
  CHECK(english.letter("7 of 9") == "#");
  CHECK(english.letter("") == "#");
  CHECK(english.letter("Νεφέλη") == "Ν");
  CHECK(arabic.letter("قمر") == "ق");
  CHECK(english.sort_key("Ada") < english.sort_key("ágnes"));
  CHECK(english.sort_key("ágnes") < english.sort_key("Agnesa"));
  CHECK(spanish.sort_key("nube") < spanish.sort_key("ñandú"));
}

TEST_CASE("an owner is looked up by the last word of the name", "[book]") {
  CHECK(by_last_word("R. Adeyemi") == "Adeyemi R.");
  CHECK(by_last_word(" Cher ") == "Cher");
  CHECK(by_last_word("").empty());
}

TEST_CASE("pages before the first have small Roman numbers", "[book]") {
  CHECK(roman(1) == "i");
  CHECK(roman(4) == "iv");
  CHECK(roman(49) == "xlix");
  CHECK(roman(1994) == "mcmxciv");
}
}  // namespace furnish::test
