#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <regex>
#include <string>
#include <vector>

// Sheets of several pets may be made at one time, so nothing that changes belongs to the whole
// process.

namespace {
namespace fs = std::filesystem;

/// What a line does to the whole process; empty if nothing.
std::string shared_in(const std::string& line) {
  if (line.find("//") == line.find_first_not_of(' ') && line.find("//") != std::string::npos) {
    return {};
  }
  // A call that changes what the process has, or answers from a place that all threads write to.
  static const std::regex call(
      R"(\b(setrlimit|setlocale|setenv|putenv|chdir|current_path|umask|signal|strtok|localtime|gmtime|asctime|ctime|s?rand|getrlimit)\(|locale::global)");
  // Variables that outlive a call: not constants, not functions (a bracket comes first), not what
  // is made for all threads.
  static const std::regex variable(
      R"(^\s*(inline|thread_local|static)\s+(?!const\b|constexpr\b|inline constexpr\b|std::once_flag\b|std::atomic\b|namespace\b)[^()]*([=;{]|$))");
  std::smatch found;
  if (std::regex_search(line, found, call)) return found.str();
  if (std::regex_search(line, found, variable)) return found.str();
  return {};
}
}  // namespace

TEST_CASE("what belongs to the whole process is found in a line of source") {
  for (const char* const line :
       {"  static int count = 0;", "static std::map<int, int> seen;", "inline bool ready{false};",
        "thread_local int depth = 0;", "  ::setrlimit(RLIMIT_AS, &limit);",
        "  std::locale::global(other);", "  const auto* parts = std::localtime(&now);"}) {
    INFO(line);
    CHECK_FALSE(shared_in(line).empty());
  }
  for (const char* const line :
       {"  static const auto keys = [] {", "static constexpr int most = 3;",
        "  static std::unique_ptr<Words> open(const Chain&);", "  static std::once_flag once;",
        "inline constexpr std::size_t face_count = 4;", "  ::localtime_r(&now, &parts);",
        "/// static int count;", "inline namespace literals {",
        "  static_assert(sizeof(int) == 4);"}) {
    INFO(line);
    CHECK(shared_in(line).empty());
  }
}

TEST_CASE("nothing that changes belongs to the whole process") {
  std::vector<std::string> found;
  std::size_t files = 0;
  const fs::path source = fs::path(FURNISH_SOURCE_DIR) / "src";
  for (const auto& entry : fs::recursive_directory_iterator(source)) {
    const auto ending = entry.path().extension();
    if (ending != ".cpp" && ending != ".h") continue;
    ++files;
    std::ifstream file(entry.path());
    const std::string name = fs::relative(entry.path(), source);
    for (std::string line; std::getline(file, line);) {
      const std::string what = shared_in(line);
      if (!what.empty()) found.push_back(name + ": " + what);
    }
  }
  CHECK(files > 100);
  // The program's own answer to a broken pipe; what one thread may take and unpack and the dogs that
  // it drew last, which are that thread's; and the lock under which threads load a face of this
  // machine.
  std::ranges::sort(found);
  CHECK(found == std::vector<std::string>{
                     "app/main.cpp: signal(",
                     "figure/drawn_dog.cpp:   thread_local std::deque<std::pair<DrawnFrom, "
                     "DrawnDogPtr>> kept;",
                     "output/memory_budget.cpp: thread_local std::int64_t left = no_budget;",
                     "output/unpack_budget.cpp: thread_local std::int64_t may_flow = no_bound;",
                     "page/fonts.cpp:   static std::mutex one_at_a_time;"});
}
