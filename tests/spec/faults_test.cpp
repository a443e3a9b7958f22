#include <catch2/catch.hpp>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <vector>

#include "spec/fault_case.h"

// Every file of tests/spec/faults says at its end what the reader must say about it. Whoever
// changes a message runs these tests once with FURNISH_APPROVE=1 in the environment: the files are
// written anew, and the difference is what to look at before it is committed.

namespace furnish::test {
namespace {
std::vector<std::string> fault_files() {
  std::vector<std::string> out;
  const auto folder = std::filesystem::path(FURNISH_SOURCE_DIR) / "tests" / "spec" / "faults";
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    if (entry.path().extension() == ".toml") out.push_back(entry.path().string());
  }
  std::ranges::sort(out);
  return out;
}
}  // namespace

TEST_CASE("every faulty file gets exactly the diagnostics that stand in it", "[faults]") {
  const bool approving = std::getenv("FURNISH_APPROVE") != nullptr;
  for (const std::string& path : fault_files()) {
    const FaultCase test = load_fault_case(path);
    const Reading reading = read_fault_case(test);
    INFO(path);
    if (approving && reading.said != test.expected) {
      approve(test, reading.said);
      WARN("approved " << path);
      continue;
    }
    CHECK(reading.said == test.expected);
    CHECK_FALSE(reading.said.empty());
    // A file is refused by errors and by nothing else.
    const bool has_error = reading.said.find(": error: ") != std::string::npos;
    CHECK(reading.value == !has_error);
  }
}

TEST_CASE("there are faulty files of every kind", "[faults]") {
  const auto files = fault_files();
  CHECK(files.size() >= 60);
  for (const char* kind : {"salon-", "pet-", "style-", "visit-", "day-"}) {
    INFO(kind);
    CHECK(std::ranges::count_if(files, [&](const std::string& path) {
            return path.find(std::string("/") + kind) != std::string::npos;
          }) >= 5);
  }
}
}  // namespace furnish::test
