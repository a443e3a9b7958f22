#include <catch2/catch.hpp>

#include "app/program.h"
#include "sheet/desk.h"

// What a slip on the command line is told.

namespace furnish::test {
namespace {
const std::string in_lantern =
    " --salon " + sample("lantern-street") + " --on " + std::string(demo_date) + " ";

bool has(const std::string& text, const std::string& what) {
  return text.find(what) != std::string::npos;
}
}  // namespace

TEST_CASE("an unknown command is told the nearest, and help knows each", "[command-line]") {
  const auto ran = furnish("crad marlow");
  CHECK(ran.status == 2);
  CHECK(ran.err == "there is no command \"crad\"; did you mean card?\n");
  CHECK(has(furnish("zzzzzz").err, "one of card, style"));
  CHECK(furnish("help card").out == furnish("card --help").out);
  CHECK(furnish("help").out == furnish("--help").out);
  CHECK(furnish("help card").status == 0);
  CHECK(furnish("help crad").status == 2);
}

TEST_CASE("an output whose ending is no format is a wrong command line", "[command-line]") {
  const TemporaryFolder folder;
  for (const char* name : {"pip.jpg", "pip.pfd", "pip.docx"}) {
    INFO(name);
    const auto ran = furnish("card pip" + in_lantern + "-o " + folder.path(name));
    CHECK(ran.status == 2);
    CHECK(has(ran.err, ".pdf, .png, .svg or .txt"));
  }
  CHECK(files_below(folder.path("")).empty());
  CHECK(furnish("card pip --format png" + in_lantern + "-o " + folder.path("pip.x")).status == 0);
}
}  // namespace furnish::test
