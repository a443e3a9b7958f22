#pragma once

#include <string_view>

#include "base/diagnostic.h"
#include "base/source.h"

namespace furnish {

/// Reports a fault that the TOML parser found at `at`. The slips that people make most (a quantity
/// or a word without quotes, a comma for the point, a date the other way round, a key twice …) are
/// told in our words, with what to write and the first place where there is one; others in the
/// parser's.
void report_syntax_fault(const SourceText&, SourceSpan at, std::string_view parser_says,
                         DiagnosticSink&);
}  // namespace furnish
