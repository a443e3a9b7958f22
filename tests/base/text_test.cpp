#include "base/text.h"

#include <array>
#include <catch2/catch.hpp>

using namespace furnish;

TEST_CASE("code points and their bytes") {
  CHECK(code_points("") == 0);
  CHECK(code_points("häß") == 3);
  CHECK(code_points("🐕½") == 2);
  CHECK(byte_of_code_point("häß", 2) == 3);
  CHECK(byte_of_code_point("häß", 9) == 5);
}

// The Unicode Standard, table 3-7: well-formed byte sequences.
TEST_CASE("what is not UTF-8 is found where it is") {
  CHECK_FALSE(first_bad_utf8("plain, häß, 日本, 🐕"));
  CHECK(first_bad_utf8("a\x80") == 1);
  CHECK(first_bad_utf8("\xC0\xAF") == 0);          // overlong
  CHECK(first_bad_utf8("ab\xED\xA0\x80") == 2);    // a surrogate
  CHECK(first_bad_utf8("\xF4\x90\x80\x80") == 0);  // past U+10FFFF
  CHECK(first_bad_utf8("x\xE2\x82") == 1);         // cut off
  CHECK(first_bad_utf8("\xFF") == 0);
}

TEST_CASE("words") {
  CHECK(trimmed(" \t a b \n") == "a b");
  CHECK(trimmed("  ").empty());
  CHECK(lower_ascii("ÄBc") == "Äbc");
  CHECK(capitalised("left hock") == "Left hock");
  CHECK(capitalised("éclair") == "Éclair");
  CHECK(capitalised("œil droit") == "Œil droit");
  CHECK(capitalised("ярко") == "Ярко");
  CHECK(capitalised("ђак") == "Ђак");
  CHECK(capitalised("ǆep") == "ǅep");  // a title case of its own (UnicodeData.txt, U+01C6)
  CHECK(capitalised("日本") == "日本");
  CHECK(capitalised("").empty());
  CHECK(capitalised("\u2068left") == "\u2068Left");
  CHECK(uncapitalised("Left Hock") == "left Hock");
  CHECK(uncapitalised("Échine") == "échine");
  CHECK(uncapitalised("").empty());
  const std::array<std::string, 3> words{"a", "b", "c"};
  CHECK(joined(words, ", ") == "a, b, c");
  CHECK(listed(words) == "a, b and c");
  CHECK(listed(std::span(words).first(1)) == "a");
  CHECK(listed({}).empty());
}

TEST_CASE("edits between words") {
  CHECK(edit_distance("back", "back") == 0);
  CHECK(edit_distance("bak", "back") == 1);
  CHECK(edit_distance("abck", "back") == 1);  // neighbours swapped
  CHECK(edit_distance("", "back") == 4);
  CHECK(edit_distance("kitten", "sitting") == 3);  // the textbook pair
}

TEST_CASE("the nearest word, if it is near") {
  const std::array<std::string_view, 4> words{"back", "belly", "breeches", "sides"};
  CHECK(nearest("bak", words) == "back");
  CHECK(nearest("belyl", words) == "belly");
  CHECK_FALSE(nearest("muzzle", words));
  CHECK_FALSE(nearest("zz", words));  // as many letters would change as there are
  CHECK_FALSE(nearest(std::string(100, 'a'), words));
}

TEST_CASE("what is not seen but steers what shows it is written out") {
  CHECK(visible("häß\t日本 🐕") == "häß\t日本 🐕");
  CHECK(visible(std::string_view("a\0b", 3)) == "a\\u{0}b");
  CHECK(visible("\x1B[2J\x7F\u009B\n") == "\\u{1B}[2J\\u{7F}\\u{9B}\\u{A}");
  CHECK(visible("\u202Ex\u2069\u200F\u061C\u2028") ==
        "\\u{202E}x\\u{2069}\\u{200F}\\u{61C}\\u{2028}");
  CHECK(visible_json("[\n\t\"a\u202E\u0085b\\n\u00E9\"]\n") ==
        "[\n\t\"a\\u202E\\u0085b\\n\u00E9\"]\n");
  CHECK(turns_direction("a\u202Eb"));
  CHECK(turns_direction("\u2068"));
  CHECK_FALSE(turns_direction("مرحبا\u200F"));
  CHECK(turns_what_follows("a\u202Eb"));
  CHECK(turns_what_follows("\u2068a\u2069\u202Bb"));
  CHECK_FALSE(turns_what_follows("a \u2068l\u202Eead\u2069, b\u202C"));
}

TEST_CASE("a text is blank if nothing of it can be seen") {
  CHECK(blank(""));
  CHECK(blank(" \t\u00A0\u3000"));
  CHECK(blank("\u200B\uFEFF\u2060"));
  CHECK(blank("\u2800\u3164"));
  CHECK_FALSE(blank(" a\u200B"));
  CHECK_FALSE(blank("\xFF"));
}
