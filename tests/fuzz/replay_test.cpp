#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <iterator>

#include "fuzz/targets.h"

// What the fuzzers found and kept: inputs that reach what others do not, and those that once did
// harm, each under a name that says what it was. A promise that does not hold aborts.

namespace furnish::fuzz {
namespace {
namespace fs = std::filesystem;

std::size_t replay(const fs::path& folder, const Target& target) {
  std::size_t count = 0;
  if (!fs::exists(folder)) return count;
  for (const auto& entry : fs::directory_iterator(folder)) {
    std::ifstream file(entry.path(), std::ios::binary);
    const std::string bytes(std::istreambuf_iterator<char>(file), {});
    INFO(entry.path().string());
    target.run(bytes);
    ++count;
  }
  return count;
}
}  // namespace

TEST_CASE("what fuzzers kept does no harm") {
  const fs::path here = fs::path(FURNISH_SOURCE_DIR) / "tests/fuzz";
  for (const Target& target : targets) {
    INFO(target.name);
    target.run("");
    CHECK(replay(here / "kept" / target.name, target) > 0);
    replay(here / "harm" / target.name, target);
  }
}
}  // namespace furnish::fuzz
