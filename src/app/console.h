#pragma once

#include <string_view>

#include "base/diagnostic.h"

namespace furnish {

/// What a run says to the person: faults to stderr, each once; results to stdout.
class Console {
 public:
  /// `quiet_output`: a sheet goes to the standard output, so nothing else may.
  Console(const SourceSet& sources, const DiagnosticSink& sink, bool quiet_output)
      : sources_(sources), sink_(sink), quiet_(quiet_output) {}

  /// From here on a warning is one line: its place and what it says, each matter once, the gravest
  /// of a file first.
  void be_brief() { brief_ = true; }
  /// Prints what was reported since the last call, in reading order.
  void show_reports();
  /// A line of the result; dropped where the sheet itself is the output.
  void say(std::string_view line) const;
  bool any_warning() const;
  /// False, with the reason told, if the standard output did not take all that was said.
  bool delivered() const;

 private:
  const SourceSet& sources_;
  const DiagnosticSink& sink_;
  bool quiet_;
  bool brief_ = false;
  std::size_t shown_ = 0;
};
}  // namespace furnish
