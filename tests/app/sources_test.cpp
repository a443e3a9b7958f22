#include <catch2/catch.hpp>

#include "app/program.h"
#include "sheet/desk.h"

namespace furnish::test {
TEST_CASE("style --sources names the file and line of each part, of the pet's and of the style's",
          "[style]") {
  const TemporaryFolder folder;
  put(folder, "styles/own.toml",
      "[style]\nname = \"Own\"\n[trim]\nbody = { blade = \"4F\" }\nears = { brush = true }\n");
  put(folder, "pets/rex.toml",
      "[pet]\nname = \"Rex\"\n[trim]\nstyle = \"own\"\n\ntail = { shears = \"straight\", leave = "
      "\"20 mm\" }\n");
  const auto page = [&](const std::string& options) {
    const auto ran = furnish("style rex --on 2026-11-24 --format text -o - " + options,
                             "cd " + folder.path("") + " &&");
    INFO(ran.err);
    REQUIRE(ran.status == 0);
    return without_space(ran.out);
  };
  const std::string with = page("--sources"), without = page("");
  for (const char* source : {"styles/own.toml:4", "styles/own.toml:5", "pets/rex.toml:6"}) {
    INFO(source << " in\n" << with);
    CHECK(with.find(source) != std::string::npos);
    CHECK(without.find(source) == std::string::npos);
  }
  // It is an option of style sheets alone.
  CHECK(furnish("card rex --sources", "cd " + folder.path("") + " &&").status == 2);
}
}  // namespace furnish::test
