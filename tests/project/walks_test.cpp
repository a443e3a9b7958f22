// DEVELOPERS.md walks through the program by name; a name that went must go from there too.
#include <catch2/catch.hpp>

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>
#include <string>
#include <vector>

namespace {
namespace fs = std::filesystem;

const fs::path root = FURNISH_SOURCE_DIR;

std::string read(const fs::path& path) {
  std::ifstream in(path);
  REQUIRE(in);
  std::ostringstream out;
  out << in.rdbuf();
  return out.str();
}

/// Without `//` comments: a name that is only spoken of is gone.
std::string code_of(const std::string& text) {
  std::string out;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) out += line.substr(0, line.find("//")) + '\n';
  return out;
}

std::vector<std::string> identifiers(const std::string& text) {
  std::vector<std::string> out;
  std::string word;
  for (const char c : text + ' ') {
    if (std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_') {
      word += c;
    } else if (!word.empty()) {
      out.push_back(std::exchange(word, {}));
    }
  }
  return out;
}

std::set<std::string> identifiers_of_src() {
  std::set<std::string> out;
  for (const auto& entry : fs::recursive_directory_iterator(root / "src")) {
    if (entry.path().extension() != ".h" && entry.path().extension() != ".cpp") continue;
    for (std::string& word : identifiers(code_of(read(entry.path())))) out.insert(std::move(word));
  }
  return out;
}

/// What stands in backquotes in the section of the walks.
std::vector<std::string> named_in_walks() {
  const std::string all = read(root / "DEVELOPERS.md");
  const std::size_t begin = all.find("\n## Two walks\n");
  REQUIRE(begin != std::string::npos);
  const std::string walks = all.substr(begin, all.find("\n## ", begin + 1) - begin);
  std::vector<std::string> out;
  for (std::size_t at = walks.find('`'); at != std::string::npos; at = walks.find('`', at)) {
    const std::size_t end = walks.find('`', at + 1);
    REQUIRE(end != std::string::npos);
    out.push_back(walks.substr(at + 1, end - at - 1));
    at = end + 1;
  }
  return out;
}
}  // namespace

TEST_CASE("every name in the walks of DEVELOPERS.md is in the sources") {
  const std::set<std::string> known = identifiers_of_src();
  const std::vector<std::string> names = named_in_walks();
  CHECK(names.size() > 60);
  for (const std::string& name : names) {
    INFO(name);
    if (name.find('/') != std::string::npos) {
      const bool whole = name.starts_with("tests/") || name == "src/";
      CHECK(fs::exists(whole ? root / name : root / "src" / name));
      continue;
    }
    for (const std::string& word : identifiers(name)) CHECK(known.contains(word));
  }
}
