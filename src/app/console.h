#pragma once

#include <cstddef>
#include <set>
#include <span>
#include <string>
#include <string_view>

#include "app/progress.h"
#include "base/diagnostic.h"

namespace furnish {
struct SaidBefore;

/// What a run says to the person: faults to stderr, each once; results to stdout.
class Console {
 public:
  /// `quiet_output`: a sheet goes to the standard output, so nothing else may.
  Console(const SourceSet&, const DiagnosticSink&, bool quiet_output);
  ~Console() { progress_.clear(); }
  Console(const Console&) = delete;
  Console& operator=(const Console&) = delete;

  /// From here on a warning is one line: its place and what it says, each matter once, the gravest
  /// of a file first.
  void be_brief() { brief_ = true; }
  /// Prints what was reported since the last call, in reading order; what is to be said once
  /// (Diagnostic::once), once.
  void show_reports();
  /// All that was reported is shown: the sink lets go of it. What --strict asks for is kept.
  void let_go(DiagnosticSink&);
  /// Warnings of a sheet that is as it was made before, as it would say them now.
  void show_before(std::span<const SaidBefore>);
  /// A line of the result; dropped where the sheet itself is the output.
  void say(std::string_view line);
  /// A file that was written, as a line of the result. On a terminal not where there are many: the
  /// closing line counts them.
  void say_written(std::string_view path);
  /// Many pets are coming, and this one is next: for who waits at a terminal.
  void expect(std::size_t pets) { progress_.expect(expected_ = pets); }
  void all_came() { expect(0); }
  void at(std::string_view pet) { progress_.at(pet); }
  /// "499 of 500; 1 with faults": how a run of several ended. Told at a terminal, and elsewhere if
  /// not all went well.
  void close(std::size_t done, std::size_t faulty, std::size_t all);
  /// Why --strict makes the status one of faults: how many warnings there were, and the first.
  void tell_strict();
  bool any_warning();
  /// False, with the reason told, if the standard output did not take all that was said.
  bool delivered() const;

 private:
  void count_warnings();

  const SourceSet& sources_;
  const DiagnosticSink& sink_;
  bool quiet_;
  bool brief_ = false;
  std::size_t shown_ = 0, expected_ = 0;
  std::set<std::string> said_once_, counted_once_;
  /// Warnings as --strict counts them: as far as they were counted in the sink, how many, and how
  /// the first would be said as an error, up to its words and from them on.
  std::size_t counted_ = 0, warnings_ = 0;
  std::string first_place_, first_words_;
  Progress progress_;
};
}  // namespace furnish
