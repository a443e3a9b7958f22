#include "base/encoding.h"

#include <catch2/catch.hpp>
#include <string>

using namespace furnish;
using namespace std::string_literals;

namespace {
/// "Zoë, 5\n" in UTF-16.
const std::string little =
                      "Z\0o\0\xEB\0,\0 \0"
                      "5\0\n\0"s,
                  big =
                      "\0Z\0o\0\xEB\0,\0 \0"
                      "5\0\n"s;
}  // namespace

// Byte order marks: The Unicode Standard, 23.8, table 23-5.
TEST_CASE("a text is read in the encoding that it is in", "[encoding]") {
  const auto reads = [](const std::string& bytes, std::string_view text, std::string_view what) {
    const DecodedText read = decoded(bytes);
    CHECK(read.text == text);
    CHECK(read.encoding.starts_with(what));
  };
  reads("Zoë, 5\n", "Zoë, 5\n", "UTF-8");
  reads("\xEF\xBB\xBFZoë, 5\n", "Zoë, 5\n", "UTF-8");
  reads("Zo\xEB, 5\n", "Zoë, 5\n", "Windows-1252");
  reads("\xFF\xFE" + little, "Zoë, 5\n", "UTF-16");
  reads("\xFE\xFF" + big, "Zoë, 5\n", "UTF-16");
  reads(little, "Zoë, 5\n", "UTF-16");
  reads(big, "Zoë, 5\n", "UTF-16");
  // The same section's surrogates: U+1F415.
  reads("\xFF\xFE\x3D\xD8\x15\xDC"s, "🐕", "UTF-16");
  reads("", "", "UTF-8");
  // Unicode's mapping table CP1252.TXT, where it differs from Latin 1.
  reads("\x80 \x8A \x92 \x9F", "€ Š ’ Ÿ", "Windows-1252");
  reads("a\rb\r\nc\r", "a\nb\r\nc\n", "UTF-8");
}

TEST_CASE("what is no letter of the encoding is seen", "[encoding]") {
  CHECK(decoded("Zoë Håkan Ünal, Jos\xE9\n").text == "Zoë Håkan Ünal, Jos\uFFFD\n");
  CHECK(decoded("\xEF\xBB\xBFJos\xE9").text == "Jos\uFFFD");
  CHECK(decoded("\xFF\xFE\x3D\xD8x\0"s).text == "\uFFFDx");  // half a pair
  CHECK(decoded("\xFF\xFEx\0y"s).text == "x\uFFFD");         // half a unit
}
