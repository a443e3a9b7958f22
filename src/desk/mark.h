#pragma once

#include <cstddef>
#include <deque>
#include <string>
#include <string_view>
#include <utility>

namespace furnish::desk {

/// What tells two texts apart: their sums (see base/fnv.h) and lengths, in hexadecimal. Who may
/// send one may write the file.
std::string mark_of(std::string_view text);

/// The texts that pages were given lately, by their marks, so that a change can be laid on the text
/// it was made of.
class GivenTexts {
 public:
  static constexpr std::size_t most = 256;
  /// Remembers the text and gives its mark.
  std::string give(const std::string& text);
  /// Null if it was never given, or so long ago that it is forgotten.
  const std::string* find(std::string_view mark) const;

 private:
  std::deque<std::pair<std::string, std::string>> texts_;
};
}  // namespace furnish::desk
