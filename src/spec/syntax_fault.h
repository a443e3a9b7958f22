#pragma once

#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "base/source.h"

namespace furnish {

/// Reports a fault that the TOML parser found at `at`. The slips that people make most (a quantity
/// or a word without quotes, a comma for the point, a date the other way round, a key twice …) are
/// told in our words, with what to write and the first place where there is one; others in the
/// parser's.
void report_syntax_fault(const SourceText&, SourceSpan at, std::string_view parser_says,
                         DiagnosticSink&);

/// A time of day without seconds in a line, as TOML 1.1 has it: `at = 10:30`. In bytes.
struct ShortTime {
  std::size_t at, bytes;
};
/// Those that stand behind an equals sign, outside of strings and comments. Behind `dilution` it is
/// no time.
std::vector<ShortTime> short_times(std::string_view line);
}  // namespace furnish
