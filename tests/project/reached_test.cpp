// What nothing calls goes: the program is linked without what it cannot reach, so whatever our
// libraries define and the program lacks is called by nobody, or by tests alone.
#include <catch2/catch.hpp>

#include <cstdio>
#include <filesystem>
#include <map>
#include <set>
#include <string>
#include <string_view>

namespace {
namespace fs = std::filesystem;

/// Functions and tables that stay though the program does not reach them, each with its reason. An
/// entry that the program reaches by now is a fault too.
const std::map<std::string, std::string> kept{
    {"furnish::arc_minutes", "tests hold the type of pages to it"},
    {"furnish::capital_height", "tests hold arc_minutes() to it"},
    {"furnish::contrast", "tests hold the inks of pages to it"},
    {"furnish::luminance", "contrast() is made of it"},
    {"furnish::to_grey", "tests hold the inks to their contrast in grey"},
    {"furnish::EditedText::apply", "of several edits all or none: tests make them so"},
};

/// Code and data, as nm marks them, that all files of a program may see. What headers define has a
/// mark of its own and is not among them: it is compiled only where it is called.
constexpr std::string_view seen_by_all = "TRDB";
/// Linked, any of it may be marked as the file's own. Some linkers still name what they left out,
/// as a number without a section: "a".
constexpr std::string_view linked = "TtRrDdBb";

/// Names in namespace furnish that a program or library defines with one of these marks.
std::set<std::string> defined_in(const fs::path& binary, std::string_view marks) {
  const std::string command =
      std::string(FURNISH_NM) + " --demangle --defined-only '" + binary.string() + "'";
  std::set<std::string> out;
  FILE* const pipe = popen(command.c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::string line;
  for (int c = std::fgetc(pipe); c != EOF; c = std::fgetc(pipe)) {
    if (c != '\n') {
      line += static_cast<char>(c);
      continue;
    }
    // "0000000000001a40 T furnish::name(...)"
    constexpr std::size_t address = 16, name_at = address + 3;
    if (line.size() > name_at && line.compare(name_at, 9, "furnish::") == 0 &&
        marks.find(line[address + 1]) != std::string_view::npos) {
      out.insert(line.substr(name_at));
    }
    line.clear();
  }
  REQUIRE(pclose(pipe) == 0);
  return out;
}

/// Without parameters, as one would look for it.
std::string short_name(const std::string& name) {
  return name.substr(0, name.find_first_of("[("));
}
}  // namespace

TEST_CASE("what nothing calls is gone") {
  const std::set<std::string> reached = defined_in(FURNISH_PROGRAM, linked);
  std::set<std::string> defined;
  for (const auto& entry : fs::recursive_directory_iterator(fs::path(FURNISH_BUILD_DIR) / "src")) {
    if (entry.path().extension() == ".a") defined.merge(defined_in(entry.path(), seen_by_all));
  }
  CHECK(defined.size() > 500);
  std::set<std::string> unreached;
  for (const std::string& name : defined) {
    if (!reached.contains(name)) unreached.insert(short_name(name));
  }
  for (const std::string& name : unreached) {
    INFO("nothing calls " << name);
    CHECK(kept.contains(name));
  }
  for (const auto& [name, reason] : kept) {
    INFO(name << " is kept because " << reason);
    CHECK(unreached.contains(name));
  }
}
