#pragma once

#include <catch2/catch.hpp>

#include <string>
#include <vector>

namespace furnish::test {

/// The words a sentence must have, and those that would make it wrong.
struct MustSay {
  std::vector<std::string> must, never;
};

inline void check(const std::string& text, const MustSay& said) {
  for (const std::string& word : said.must) {
    CAPTURE(text, word);
    CHECK(text.find(word) != std::string::npos);
  }
  for (const std::string& word : said.never) {
    CAPTURE(text, word);
    CHECK(text.find(word) == std::string::npos);
  }
}
}  // namespace furnish::test
