#pragma once

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
};
}  // namespace furnish
