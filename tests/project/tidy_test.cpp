#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <set>
#include <string>

namespace {
namespace fs = std::filesystem;
}

TEST_CASE("no source file is over 400 lines") {
  std::size_t files = 0;
  for (const char* folder : {"src", "tests"}) {
    for (const auto& entry :
         fs::recursive_directory_iterator(fs::path(FURNISH_SOURCE_DIR) / folder)) {
      const auto ending = entry.path().extension();
      if (ending != ".cpp" && ending != ".h" && ending != ".def") continue;
      std::ifstream file(entry.path());
      std::string text;
      std::size_t lines = 0;
      while (std::getline(file, text)) ++lines;
      INFO(entry.path());
      CHECK(lines <= 400);
      ++files;
    }
  }
  CHECK(files > 100);
}

TEST_CASE("the top level holds what it should and nothing else") {
  const std::set<std::string> expected{"CMakeLists.txt", "README.md", "DEVELOPERS.md",
                                       "LICENSE",        "src",       "styles",
                                       "fonts",          "tests",     "samples"};
  std::set<std::string> found;
  for (const auto& entry : fs::directory_iterator(FURNISH_SOURCE_DIR)) {
    const std::string name = entry.path().filename();
    // What a build makes and git ignores: the build folder and the file that names the presets.
    if (name.front() == '.' || name == "build" || name == "CMakeUserPresets.json") continue;
    found.insert(name);
  }
  CHECK(found == expected);
}
