#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>
#include <set>
#include <sstream>

#include "app/program.h"
#include "sheet/desk.h"

// `check` says in a line what is new, and names files that nobody reads.

namespace furnish::test {

TEST_CASE("check names files that look meant and are never read", "[check]") {
  const TemporaryFolder folder;
  const std::string pet = "[pet]\nname = \"Rex\"\n",
                    visit = "date = 2026-11-24\nunfinished = false\n";
  put(folder, "pets/rex.toml", pet);
  put(folder, "pets/moss.toml", pet);
  put(folder, "pets/bella.toml.txt", pet);
  put(folder, "pets/Moss.TOML", pet);
  put(folder, "visits/ghost/2026-11-24.toml", visit);
  put(folder, "visits/mos/2026-11-24.toml", visit);
  put(folder, "visits/rex/2026-11-24.toml", visit);
  put(folder, "visits/rex-2026-10-01.toml", visit);
  put(folder, "pets/notes.txt", "mine");
  const auto ran = furnish("check " + folder.path("") + " --on 2026-11-24 --verbose");
  INFO(ran.err);
  CHECK(has(ran.err, "pets/bella.toml.txt: is not read"));
  CHECK(has(ran.err, "name it bella.toml"));
  CHECK(has(ran.err, "pets/Moss.TOML: is not read"));
  CHECK(has(ran.err, "visits/ghost: there is no pet 'ghost' in pets/"));
  CHECK(has(ran.err, "furnish rename mos moss"));
  CHECK(has(ran.err, "visits/rex-2026-10-01.toml: a visit lies in the folder of its pet"));
  CHECK(has(ran.err, "visits/rex/2026-10-01.toml"));
  CHECK_FALSE(has(ran.err, "notes.txt"));
  CHECK(furnish("check " + folder.path("") + " --on 2026-11-24 --strict").status == 1);
}

TEST_CASE("check tells a warning in one line, and with -v all of it", "[check]") {
  const std::string check = "check " + sample("lantern-street") + " --on 2026-11-24";
  const auto brief = furnish(check), all = furnish(check + " -v");
  const auto lines = [](const std::string& text) { return std::ranges::count(text, '\n'); };
  // One line a matter, and none twice.
  std::istringstream in(brief.err);
  std::set<std::string> matters;
  for (std::string line; std::getline(in, line);) {
    INFO(line);
    const std::size_t at = line.find(": warning: ");
    REQUIRE(at != std::string::npos);
    CHECK(matters.insert(line.substr(at, line.find(" (and ") - at)).second);
  }
  CHECK(lines(brief.err) < 30);
  CHECK(lines(brief.err) < lines(all.err) / 2);
  CHECK(has(all.out, "visits 27"));
  CHECK(has(brief.out, " files are good"));
  // Errors keep their lines.
  const TemporaryFolder folder;
  put(folder, "pets/rex.toml", "[pet]\nnmae = \"Rex\"\n");
  CHECK(has(furnish("check " + folder.path("")).err, "hint: did you mean 'name'?"));
}

TEST_CASE("check --json gives every place with its range", "[check]") {
  const TemporaryFolder folder;
  put(folder, "pets/rex.toml", "[pet]\nname = \"Rex\"\ncoat = \"fluffy\"\n");
  const auto ran = furnish("check " + folder.path("") + " --json");
  CHECK(ran.status == 1);
  CHECK(ran.err == "");
  const auto said = nlohmann::json::parse(ran.out);
  REQUIRE(said.size() == 1);
  CHECK(said[0]["severity"] == "error");
  CHECK(said[0]["code"] == "unknown-word");
  CHECK(said[0]["file"].get<std::string>().ends_with("pets/rex.toml"));
  CHECK(said[0]["begin"] == nlohmann::json({{"line", 3}, {"column", 8}}));
  CHECK(said[0]["end"] == nlohmann::json({{"line", 3}, {"column", 16}}));
}
}  // namespace furnish::test
