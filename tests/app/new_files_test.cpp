#include <catch2/catch.hpp>

#include <filesystem>
#include <regex>
#include <sstream>

#include "app/program.h"
#include "sheet/desk.h"
#include "spec/file_kinds.h"

// What `new` writes is good as it is, says all there is to say, and each of its lines may be
// brought to life.

namespace furnish::test {
namespace {
namespace fs = std::filesystem;

struct Started {
  const char* kind;
  const char* arguments;
  const char* file;
};
constexpr Started all[] = {{"pet", "pet 'Lady Jane'", "pets/lady-jane.toml"},
                           {"style", "style 'Mud season'", "styles/mud-season.toml"},
                           {"day", "day 2026-11-24", "days/2026-11-24.toml"}};

std::string new_salon(const TemporaryFolder& folder) {
  const std::string salon = folder.path("corner dogs");
  const auto ran = furnish("new salon " + test::quoted(salon));
  REQUIRE(ran.status == 0);
  CHECK(ran.out == salon + "/salon.toml\n");
  return salon;
}

void collect(const TableInfo& table, std::set<const TableInfo*>& seen,
             std::vector<const KeyInfo*>& keys) {
  if (!seen.insert(&table).second) return;
  for (const KeyInfo* const key : table.keys) {
    keys.push_back(key);
    if (key->table != nullptr) collect(*key->table, seen, keys);
  }
  if (table.others.value != nullptr && table.others.value->table != nullptr) {
    collect(*table.others.value->table, seen, keys);
  }
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> out;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) out.push_back(line);
  return out;
}
}  // namespace

TEST_CASE("a new salon, pet, style and day are good as they are", "[new]") {
  const TemporaryFolder folder;
  const std::string salon = new_salon(folder);
  for (const Started& one : all) {
    INFO(one.kind);
    const auto ran =
        furnish("new " + std::string(one.arguments) + " --salon " + test::quoted(salon));
    CHECK(ran.status == 0);
    CHECK(ran.err == "");
    CHECK(ran.out == salon + "/" + one.file + "\n");
    const auto lines = lines_of(bytes_of(salon + "/" + one.file));
    // The schema is where the first line says, and it is that of `schema`.
    CHECK(lines.at(0) == "#:schema ../schemas/" + std::string(one.kind) + ".json");
    CHECK(bytes_of(salon + "/schemas/" + one.kind + ".json") ==
          furnish("schema " + std::string(one.kind)).out);
  }
  CHECK(lines_of(bytes_of(salon + "/salon.toml")).at(0) == "#:schema ./schemas/salon.json");
  const auto checked = furnish("check " + test::quoted(salon) + " --on 2026-11-24 --strict");
  CHECK(checked.status == 0);
  CHECK(checked.err == "");
}

TEST_CASE("new files name every key of their kind with its example and what it is for", "[new]") {
  const TemporaryFolder folder;
  const std::string salon = new_salon(folder);
  for (const Started& one : all) {
    furnish("new " + std::string(one.arguments) + " --salon " + test::quoted(salon));
  }
  for (const char* kind : {"salon", "pet", "style", "day"}) {
    const Started* const started = std::ranges::find(all, std::string_view(kind), &Started::kind);
    const std::string file = started == std::end(all) ? "salon.toml" : started->file;
    const std::string text = bytes_of(salon + "/" + file);
    std::set<const TableInfo*> seen;
    std::vector<const KeyInfo*> keys;
    collect(*find_file_kind(kind)->table, seen, keys);
    CHECK(keys.size() >= 7);
    for (const KeyInfo* const key : keys) {
      INFO(kind << " " << key->name);
      const std::string name(key->name);
      const std::string value = name + " = " + std::string(key->example);
      const bool shown = text.find(value) != std::string::npos ||
                         text.find("\n" + name + " = ") != std::string::npos ||
                         text.find("[" + name + "]") != std::string::npos;
      CHECK(shown);
      CHECK(text.find(key->doc) != std::string::npos);
    }
  }
}

TEST_CASE("each line of a new file may be brought to life", "[new]") {
  const TemporaryFolder folder;
  const std::string salon = new_salon(folder);
  // What a line says may need another beside it, or a product of that name.
  const std::regex needs_more(R"(^# (weighed|product|bottle|none|rule|conditioner|others)\b.*)");
  const std::regex sleeping(R"(^# ([a-z_0-9"]+ *= .*)$)");
  std::size_t alive = 0;
  for (const Started& one : all) {
    furnish("new " + std::string(one.arguments) + " --salon " + test::quoted(salon));
    const std::string path = salon + "/" + one.file;
    const auto lines = lines_of(bytes_of(path));
    // All of them at once, but for those and the repeated tables.
    std::string text;
    bool repeated = false;
    for (const std::string& line : lines) {
      if (line.starts_with("[")) repeated = false;
      if (line.starts_with("# [[")) repeated = true;
      std::smatch found;
      const bool wake = !repeated && std::regex_match(line, found, sleeping) &&
                        !std::regex_match(line, needs_more);
      text += (wake ? found[1].str() : line) + "\n";
      if (wake) ++alive;
    }
    folder.file("woken.toml", text);
    fs::remove(path);
    fs::copy_file(folder.path("woken.toml"), path);
    const auto checked = furnish("check " + test::quoted(path) + " --on 2026-11-24");
    INFO(text << checked.err);
    CHECK(checked.status == 0);
  }
  CHECK(alive > 40);
}

TEST_CASE("a new pet's card is that of a pet with a name and nothing else", "[new]") {
  const TemporaryFolder folder;
  const std::string salon = new_salon(folder);
  furnish("new pet Rex --salon " + test::quoted(salon));
  put(folder, "corner dogs/pets/bare.toml", "[pet]\nname = \"Rex\"\n");
  const std::string rest =
      " --salon " + test::quoted(salon) + " --on 2026-11-24 --format text -o -";
  const auto made = furnish("card rex" + rest), bare = furnish("card bare" + rest);
  CHECK(made.status == 0);
  CHECK(made.out == bare.out);
  CHECK(furnish("style rex" + rest).out == furnish("style bare" + rest).out);
}

TEST_CASE("new never writes over a file, nor outside of a salon", "[new]") {
  const TemporaryFolder folder;
  const std::string salon = new_salon(folder);
  put(folder, "corner dogs/pets/rex.toml", "[pet]\nname = \"Mine\"\n");
  const auto ran = furnish("new pet Rex --salon " + test::quoted(salon));
  CHECK(ran.status == 1);
  CHECK(bytes_of(salon + "/pets/rex.toml") == "[pet]\nname = \"Mine\"\n");
  CHECK(furnish("new salon " + test::quoted(salon)).status == 1);
  const auto outside = furnish("new pet Rex --salon " + test::quoted(folder.path("nowhere")));
  CHECK(outside.status == 1);
  CHECK(outside.err.find("furnish new salon") != std::string::npos);
  CHECK_FALSE(fs::exists(folder.path("nowhere")));
  // A name is no way out of the folder.
  furnish("new pet ../../rex --salon " + test::quoted(salon));
  CHECK(fs::exists(salon + "/pets/rex.toml"));
  CHECK_FALSE(fs::exists(folder.path("rex.toml")));
}

TEST_CASE("the ending of a file is no part of a pet's name", "[new]") {
  const TemporaryFolder folder;
  const std::string salon = folder.path("salon");
  REQUIRE(furnish("new salon " + salon).status == 0);
  CHECK(furnish("new pet rex.toml --salon " + salon).out == salon + "/pets/rex.toml\n");
  CHECK(has(bytes_of(salon + "/pets/rex.toml"), "name = \"rex\""));
  CHECK(furnish("rename rex.toml wren.toml --salon " + salon).out == salon + "/pets/wren.toml\n");
  CHECK(files_below(salon + "/pets") == std::vector<std::string>{"wren.toml"});
  CHECK(furnish("new pet .toml --salon " + salon).status == 1);
  put(folder, "salon/pets/moss.toml.toml", "[pet]\nname = \"Moss\"\n");
  const auto ran = furnish("check -v " + salon);
  CHECK(has(ran.err, "moss.toml.toml: is read under the name \"moss.toml\""));
  CHECK(has(ran.err, "name it moss.toml"));
}
}  // namespace furnish::test
