#pragma once

#include <algorithm>
#include <cstdint>

#include "base/diagnostic.h"
#include "base/files.h"
#include "base/source.h"

namespace furnish {

/// What one run of the reader works with: where files come from, where their texts are kept, and
/// where faults go. A reader adds its file to `sources` before it reports anything in it.
struct ReadContext {
  const Files& files;
  SourceSet& sources;
  DiagnosticSink& sink;
  bool passing = false;  ///< what is read is about one of many; see SourceSet
};

/// True if none of the faults lies in this file.
inline bool no_errors_in(std::uint32_t file, const DiagnosticSink& sink) {
  return std::ranges::none_of(sink.all(), [&](const Diagnostic& d) {
    return d.severity == Severity::error && d.span.file == file;
  });
}
}  // namespace furnish
