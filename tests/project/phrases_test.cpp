#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <sstream>
#include <string>

namespace {
namespace fs = std::filesystem;

/// What the first group of `pattern` takes in a text, each once.
std::set<std::string> taken(const std::string& text, const std::string& pattern) {
  const std::regex wanted(pattern);
  std::set<std::string> out;
  for (std::sregex_iterator it(text.begin(), text.end(), wanted), end; it != end; ++it) {
    out.insert((*it)[1]);
  }
  return out;
}

std::string text_of(const fs::path& file) {
  std::ostringstream text;
  text << std::ifstream(file).rdbuf();
  return text.str();
}
}  // namespace

// A text in seven languages that nothing says costs its translators for nothing.
TEST_CASE("every phrase is said by some code") {
  const fs::path source = fs::path(FURNISH_SOURCE_DIR) / "src";
  const auto phrases = taken(text_of(source / "sheet/phrases.def"), R"(PHRASE\((\w+)\))");
  REQUIRE(phrases.size() > 250);
  std::set<std::string> said;
  for (const auto& entry : fs::recursive_directory_iterator(source)) {
    if (entry.path().extension() == ".cpp" || entry.path().extension() == ".h") {
      said.merge(taken(text_of(entry.path()), R"(Phrase::(\w+))"));
    }
  }
  for (const std::string& phrase : phrases) {
    INFO(phrase);
    CHECK(said.contains(phrase));
  }
}
