#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "base/diagnostic.h"
#include "base/files.h"
#include "base/source.h"

namespace furnish {

/// What a text may not go beyond before the TOML parser sees it. The parser recurses once for every
/// part of a dotted key and every bracket, so that 100 000 dots would end the program.
inline constexpr std::size_t most_dots_in_a_line = 64, deepest_nesting = 32;

/// For each line of a text, from 1: does it begin outside of any bracket and string?
class LineStarts {
 public:
  explicit LineStarts(std::vector<bool> clean) : clean_(std::move(clean)) {}
  bool clean(std::uint32_t line) const { return line > clean_.size() || clean_[line - 1]; }

 private:
  std::vector<bool> clean_;
};

/// Refuses what no file of furnish has: more than `most` bytes, bytes that are not UTF-8,
/// control characters other than tab and line end, the bounds above. Each kind is one fault, at its
/// first place; empty after any.
std::optional<LineStarts> scan_text(const SourceText&, std::uint32_t file, DiagnosticSink&,
                                    std::size_t most = Files::largest);
}  // namespace furnish
