#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/source.h"

namespace furnish {

enum class Severity : std::uint8_t { error, warning };

/// One thing to change. `message` says what is wrong, `hint` what to do; neither ends in a full
/// stop nor names a C++ type.
struct Diagnostic {
  Severity severity = Severity::error;
  std::string code;  ///< stable, for tests and search: "unknown-key"
  SourceSpan span;
  std::string message;
  std::string hint;                                       ///< may be empty
  std::vector<std::pair<SourceSpan, std::string>> notes;  ///< other places: "first given here"
  /// What the hint offers for what stands at the span, as TOML: `"curly"`; keys in quotes too.
  std::vector<std::string> instead = {};
  /// What this is about, if each part of a work reports it and a person is told once; else empty.
  std::string once = {};
};

/// Gathers what the stages have to say. Below app/ nothing prints, exits or throws for a bad file;
/// a stage fails by an error here and an empty result.
class DiagnosticSink {
 public:
  /// The reference holds until the next call; use it to add hint and notes.
  Diagnostic& error(std::string_view code, SourceSpan at, std::string message);
  Diagnostic& warning(std::string_view code, SourceSpan at, std::string message);
  /// Takes over what another has, behind what is here; the other is empty then. So that each part
  /// of a work may report by itself, and all is told in the order of the parts.
  void take(DiagnosticSink& other);
  /// One that was reported elsewhere.
  void add(Diagnostic one) { list_.push_back(std::move(one)); }
  bool has_errors() const { return error_count() > 0; }
  std::size_t error_count() const;
  std::span<const Diagnostic> all() const { return list_; }  ///< as reported
  /// Lets go of what is here, so that a long work holds only what is still to be told; errors still
  /// count.
  void forget();

 private:
  std::vector<Diagnostic> list_;
  std::size_t forgotten_errors_ = 0;
};

/// `terminal`: the level's word and the carets stand out, by the codes of ECMA-48; nothing else
/// does.
enum class Colours : std::uint8_t { none, terminal };
/// "pets/rex.toml:7:10: error: no region 'bak'", the line, carets under the span, then notes and
/// hint; ends in a line end.
std::string to_text(const Diagnostic&, const SourceSet&, Colours = Colours::none);
/// In order of file and place, faults without a place first.
std::vector<Diagnostic> in_reading_order(std::span<const Diagnostic>);
}  // namespace furnish
