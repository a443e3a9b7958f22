#include "base/diagnostic.h"

#include <catch2/catch.hpp>

using namespace furnish;

TEST_CASE("a fault with its place, line, carets, note and hint, whole") {
  SourceSet sources;
  const auto file = sources.add("pets/rex.toml", "[trim]\n\tbak = { blade = \"10\" }\nback = 3\n");
  DiagnosticSink sink;
  auto& fault = sink.error("unknown-key", {file, {2, 2}, {2, 5}}, "no region 'bak'");
  fault.hint = "did you mean 'back'?";
  fault.notes.emplace_back(SourceSpan{file, {3, 1}, {3, 5}}, "which is here");
  CHECK(to_text(sink.all()[0], sources) ==
        "pets/rex.toml:2:2: error: no region 'bak'\n"
        "  \tbak = { blade = \"10\" }\n"
        "  \t^^^\n"
        "pets/rex.toml:3:1: note: which is here\n"
        "  back = 3\n"
        "  ^^^^\n"
        "  hint: did you mean 'back'?\n");
}

TEST_CASE("a fault without a place, and one of a file as a whole") {
  SourceSet sources;
  const auto file = sources.add("salon.toml", "");
  DiagnosticSink sink;
  sink.warning("x", {}, "the disk is full");
  sink.error("y", {file, {}, {}}, "is empty");
  CHECK(to_text(sink.all()[0], sources) == "furnish: warning: the disk is full\n");
  CHECK(to_text(sink.all()[1], sources) == "salon.toml: error: is empty\n");
  CHECK(sink.error_count() == 1);
  CHECK(sink.has_errors());
}

TEST_CASE("a span at the very end of a line still has a caret") {
  SourceSet sources;
  const auto file = sources.add("a", "ab\n");
  DiagnosticSink sink;
  sink.error("x", {file, {1, 3}, {1, 3}}, "something is missing");
  CHECK(to_text(sink.all()[0], sources) == "a:1:3: error: something is missing\n  ab\n    ^\n");
}

TEST_CASE("a long line is shown round its fault") {
  SourceSet sources;
  const auto file = sources.add("a", std::string(500, 'x'));
  DiagnosticSink sink;
  sink.error("x", {file, {1, 300}, {1, 303}}, "here");
  const std::string text = to_text(sink.all()[0], sources);
  CHECK(text.find("…") != std::string::npos);
  CHECK(text.find("^^^\n") != std::string::npos);
  CHECK(text.size() < 400);
}

TEST_CASE("reading order: by file and place, those without a place first") {
  DiagnosticSink sink;
  sink.error("c", {1, {1, 1}, {1, 2}}, "");
  sink.error("b", {0, {9, 1}, {9, 2}}, "");
  sink.error("a", {0, {2, 5}, {2, 6}}, "");
  sink.error("n", {}, "");
  std::string order;
  for (const Diagnostic& one : in_reading_order(sink.all())) order += one.code;
  CHECK(order == "nabc");
}

TEST_CASE("what parts of a work reported by themselves is told in the order of the parts") {
  DiagnosticSink whole, first, second;
  whole.warning("before", {}, "is first");
  second.error("b", {}, "came sooner");
  first.warning("a", {}, "came later");
  whole.take(first);
  whole.take(second);
  REQUIRE(whole.all().size() == 3);
  CHECK(whole.all()[1].code == "a");
  CHECK(whole.all()[2].code == "b");
  CHECK(whole.error_count() == 1);
  CHECK(first.all().empty());
  CHECK_FALSE(second.has_errors());
}
