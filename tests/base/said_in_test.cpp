#include "base/said_in.h"

#include <catch2/catch.hpp>

#include "base/text.h"

using namespace furnish;

TEST_CASE("Marks of a language go with the words and come off without a trace") {
  const std::string marked = "Vientre: " + said_in("en-GB", "lump, pea-sized") + " (24 nov).";
  CHECK(marked != without_languages(marked));
  CHECK(without_languages(marked) == "Vientre: lump, pea-sized (24 nov).");
  CHECK(without_languages("plain") == "plain");
  // A flag that is written with the same letters is no mark.
  const std::string flag = "\U0001F3F4\U000E0067\U000E0062";
  CHECK(without_languages(flag) == flag);
}

TEST_CASE("Whoever follows the marks knows each character's language") {
  LanguageMarks marks;
  std::string seen;
  const std::u32string text = U"a\U000E0001\U000E0065\U000E006Eb\U000E007Fc";
  for (const char32_t c : text) {
    if (!marks.take(c)) seen += static_cast<char>(c) + ("[" + marks.language() + "]");
  }
  CHECK(seen == "a[]b[en]c[]");
  // What is no language (RFC 5646) is none.
  LanguageMarks wrong;
  for (const char32_t c : std::u32string(U"\U000E0001\U000E0021\U000E0065")) CHECK(wrong.take(c));
  CHECK_FALSE(wrong.take(U'x'));
  CHECK(wrong.language().empty());
}

TEST_CASE("Marks stand inside those of direction, and a capital after both") {
  const std::string isolated = said_in("en", "\u2068yes\u2069");
  CHECK(isolated.starts_with("\u2068"));
  CHECK(isolated.ends_with("\u2069"));
  CHECK(without_languages(capitalised(isolated)) == "\u2068Yes\u2069");
  CHECK(without_languages(capitalised(said_in("en", "yes"))) == "Yes");
  CHECK(without_languages(uncapitalised(said_in("en", "Yes"))) == "yes");
  CHECK(language_mark(said_in("en", "")) == said_in("en", "").size() - language_ends.size());
}
