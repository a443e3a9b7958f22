#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <string>

namespace {
namespace fs = std::filesystem;

/// Which folder of src/ may include which others, besides itself. Arrows go down only.
const std::map<std::string, std::set<std::string>> may_include{
    {"base", {}},
    {"trade", {"base"}},
    {"model", {"base", "trade"}},
    {"spec", {"base", "trade", "model"}},
    {"plan", {"base", "trade", "model"}},
    {"page", {"base"}},
    {"figure", {"base", "trade", "model", "plan", "page"}},
    {"sheet", {"base", "trade", "model", "plan", "page", "figure"}},
    {"output", {"base", "page"}},
    {"desk", {"base", "trade", "model", "spec", "output"}},
    {"app", {"base", "trade", "model", "spec", "plan", "page", "figure", "sheet", "output", "desk"}},
};

/// Libraries that only one folder (or the ones named) may see.
const std::map<std::string, std::set<std::string>> only_in{
    {"toml++", {"spec"}},
    {"cairo", {"page", "output"}},
    {"pango", {"page", "output"}},
    {"unicode/", {"base", "sheet"}},
    {"CLI/", {"app"}},
    {"qpdf/", {"output"}},
    {"turbojpeg", {"output"}},
    {"png.h", {"output"}},
    {"webp/", {"output"}},
    {"libexif/", {"output"}},
    {"qrencode", {"figure"}},
    {"nlohmann/", {"app", "desk", "plan", "spec"}},
    {"microhttpd", {"desk"}},
    {"gnutls/", {"output"}},
    {"dlfcn", {"base"}},
    {"iostream", {"app"}},
};

struct Include {
  std::string file, folder, target;
};

std::vector<Include> includes_under(const fs::path& root) {
  std::vector<Include> out;
  const std::regex line(R"(^\s*#\s*include\s*["<]([^">]+)[">])");
  for (const auto& entry : fs::recursive_directory_iterator(root)) {
    const auto ending = entry.path().extension();
    if (ending != ".cpp" && ending != ".h") continue;
    std::ifstream file(entry.path());
    std::smatch found;
    for (std::string text; std::getline(file, text);) {
      if (!std::regex_search(text, found, line)) continue;
      const fs::path relative = fs::relative(entry.path(), root);
      out.push_back({relative.string(), relative.begin()->string(), found[1]});
    }
  }
  return out;
}
}  // namespace

TEST_CASE("each folder includes only what lies below it") {
  const auto includes = includes_under(fs::path(FURNISH_SOURCE_DIR) / "src");
  REQUIRE(includes.size() > 100);
  for (const Include& include : includes) {
    INFO(include.file << " includes " << include.target);
    REQUIRE(may_include.count(include.folder) == 1);
    const std::string target = include.target.substr(0, include.target.find('/'));
    if (include.target.find('/') == std::string::npos || may_include.count(target) == 0) continue;
    if (target == include.folder) continue;
    CHECK(may_include.at(include.folder).count(target) == 1);
  }
}

TEST_CASE("each library is seen by the folder that wraps it and no other") {
  for (const Include& include : includes_under(fs::path(FURNISH_SOURCE_DIR) / "src")) {
    for (const auto& [library, folders] : only_in) {
      if (include.target.rfind(library, 0) != 0) continue;
      INFO(include.file << " includes " << include.target);
      CHECK(folders.count(include.folder) == 1);
    }
  }
}

TEST_CASE("the TOML parser is included by one file") {
  std::set<std::string> files;
  for (const Include& include : includes_under(fs::path(FURNISH_SOURCE_DIR) / "src")) {
    if (include.target.rfind("toml++", 0) == 0) files.insert(include.file);
  }
  CHECK(files.size() == 1);
}
