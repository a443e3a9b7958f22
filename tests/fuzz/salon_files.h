#pragma once

#include <string>

#include "base/files.h"
#include "spec/context.h"

namespace furnish::fuzz {

/// A salon in memory: two styles that extend each other's parts, and what is given.
struct Reading {
  explicit Reading(std::map<std::string, std::string> more = {});
  MemoryFiles files;
  SourceSet sources;
  DiagnosticSink sink;
  ReadContext context{files, sources, sink};

  /// Words what was reported, as a terminal gets it: nothing in it steers one.
  void tell() const;
};
}  // namespace furnish::fuzz
