#include <catch2/catch.hpp>

#include <string>
#include <string_view>

#include "app/program.h"

namespace furnish::test {
namespace {
bool has(const std::string& text, std::string_view what) {
  return text.find(what) != std::string::npos;
}
}  // namespace

TEST_CASE("a caution of a style that several wear is told once, with their names",
          "[command-line]") {
  const TemporaryFolder folder;
  put(folder, "salon.toml", "[salon]\nname = \"S\"\n");
  put(folder, "styles/short.toml",
      "[style]\nname = \"Short\"\n[trim]\nsanitary = { blade = \"30\" }\n");
  put(folder, "pets/a.toml", "[pet]\nname = \"Ada\"\n[trim]\nstyle = \"short\"\n");
  put(folder, "pets/b.toml", "[pet]\nname = \"Bo\"\n[trim]\nstyle = \"short\"\n");
  put(folder, "pets/c.toml", "[pet]\nname = \"Cy\"\n");
  const auto ran = furnish("check " + folder.path(""));
  CHECK(ran.status == 0);
  CHECK(ran.out == "5 of 5 files are good; 2 cautions about 2 pets\n");
  const auto once = ran.err.find("(sanitary-blade)");
  REQUIRE(once != std::string::npos);
  CHECK(has(ran.err, " (Ada, Bo)\n"));
  CHECK(ran.err.find("(sanitary-blade)", once + 1) == std::string::npos);
  CHECK(has(ran.err, "styles/short.toml:4:"));
}
}  // namespace furnish::test
