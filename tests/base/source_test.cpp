#include "base/source.h"

#include <catch2/catch.hpp>
#include <string>

#include "base/diagnostic.h"

using namespace furnish;

TEST_CASE("lines and positions count from one, columns by code points") {
  const SourceText text("a.toml", "name = \"Löwe\"\r\nage = 3\n");
  CHECK(text.line(1) == "name = \"Löwe\"");
  CHECK(text.line(2) == "age = 3");
  CHECK(text.line(3).empty());
  CHECK(text.line(0).empty());
  CHECK(text.line(9).empty());
  CHECK(text.position(0) == Position{1, 1});
  CHECK(text.position(11) == Position{1, 11});  // the w: its ö has two bytes
  CHECK(text.position(16) == Position{2, 1});
  CHECK(text.position(9999) == Position{3, 1});
  CHECK(SourceText("", "").position(0) == Position{1, 1});
}

TEST_CASE("adding files never moves what is there") {
  SourceSet set;
  const std::uint32_t first = set.add("a", "one");
  const SourceText* const before = &set.at(first);
  for (int i = 0; i < 200; ++i) set.add("b", "two");
  CHECK(&set.at(first) == before);
  CHECK(set.size() == 201);
  CHECK_THROWS(set.at(900));
}

TEST_CASE("a run may read more files than 16 bits count, and each keeps its own number") {
  SourceSet set;
  constexpr std::uint32_t count = 70'000;
  for (std::uint32_t i = 0; i < count; ++i) REQUIRE(set.add(std::to_string(i), {}) == i);
  DiagnosticSink sink;
  sink.error("late", {66'001, {}, {}}, "is wrong");
  sink.error("early", {465, {}, {}}, "is wrong");  // 66,001 in 16 bits
  CHECK(to_text(sink.all()[0], set) == "66001: error: is wrong\n");
  const auto sorted = in_reading_order(sink.all());
  CHECK(sorted[0].code == "early");
  CHECK(sorted[1].code == "late");
  // What no 16 bits hold is no file's number.
  CHECK(set.at(0xFFFF).path() == "65535");
  CHECK(SourceSpan{}.file == SourceSpan::no_file);
}
