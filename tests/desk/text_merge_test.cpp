#include <catch2/catch.hpp>

#include <random>

#include "desk/text_merge.h"
#include "share.h"

namespace {
using furnish::desk::merged_texts;

const std::string base = "[pet]\nname = \"Rex\"  # the first\n\n[trim]\nbody = \"10\"\n";
}  // namespace

TEST_CASE("what two changed in other lines of a text is both in it", "[merge]") {
  const std::string theirs = "# ours\n" + base, yours = base + "ears = \"natural\"\n";
  CHECK(merged_texts(base, theirs, yours) == "# ours\n" + base + "ears = \"natural\"\n");
  CHECK(merged_texts(base, base, yours) == yours);
  CHECK(merged_texts(base, theirs, base) == theirs);
  CHECK(merged_texts(base, yours, yours) == yours);
  CHECK(merged_texts("", "", "a\n") == "a\n");
  CHECK(merged_texts("a\nb\nc\n", "b\nc\n", "a\nb\n") == "b\n");
}

TEST_CASE("where two changed the same lines nothing is guessed", "[merge]") {
  CHECK_FALSE(merged_texts("a\n", "b\n", "c\n"));
  CHECK_FALSE(merged_texts("a\n", "", "c\n"));
  CHECK_FALSE(merged_texts(base, base + "x = 1\n", base + "y = 2\n"));
  CHECK_FALSE(merged_texts("a\nb\n", "A\nb\n", "a\nB\n"));  // they touch
  CHECK_FALSE(merged_texts("a", "a\n", "b"));
  CHECK(merged_texts("a\nm\nb\n", "A\nm\nb\n", "a\nm\nB\n") == "A\nm\nB\n");
}

TEST_CASE("the end of a line is part of it", "[merge]") {
  CHECK(merged_texts("a\r\nm\r\nb", "A\r\nm\r\nb", "a\r\nm\r\nb\n") == "A\r\nm\r\nb\n");
}

TEST_CASE("no line that either wrote is lost, and none comes back", "[merge]") {
  std::mt19937 chance(20261124);
  const auto below = [&](std::size_t n) {
    return std::uniform_int_distribution<std::size_t>(0, n - 1)(chance);
  };
  int merged = 0;
  for (std::size_t trial = 0; trial < furnish::test::share_of(16000); ++trial) {
    std::vector<std::string> lines;
    for (std::size_t i = 0; i < 12; ++i) lines.push_back("line " + std::to_string(i) + "\n");
    int fresh = 0;
    const auto changed = [&](const std::string& who, std::vector<std::string>& wrote) {
      std::vector<std::string> out = lines;
      for (std::size_t change = 0; change <= below(2); ++change) {
        const auto at = out.begin() + static_cast<std::ptrdiff_t>(below(out.size()));
        if (below(3) == 0) {
          out.erase(at);
          continue;
        }
        wrote.push_back(who + std::to_string(++fresh) + "\n");
        if (below(2) == 0)
          *at = wrote.back();
        else
          out.insert(at, wrote.back());
      }
      std::string text;
      for (const std::string& line : out) text += line;
      std::erase_if(wrote, [&](const std::string& line) { return text.find(line) == text.npos; });
      return text;
    };
    std::vector<std::string> by_them, by_you;
    const std::string theirs = changed("theirs ", by_them), yours = changed("yours ", by_you);
    std::string text;
    for (const std::string& line : lines) text += line;
    const auto both = merged_texts(text, theirs, yours);
    CHECK(both == merged_texts(text, yours, theirs));
    if (!both) continue;
    ++merged;
    for (const auto& wrote : {by_them, by_you}) {
      for (const std::string& line : wrote) CHECK(both->find(line) != std::string::npos);
    }
    // Whichever of the two took a line away, it stays away.
    for (const std::string& line : lines) {
      const auto in = [&](const std::string& where) {
        return where.find(line) != std::string::npos;
      };
      CHECK(in(*both) == (in(theirs) && in(yours)));
    }
  }
  CHECK(merged > 100);
}
