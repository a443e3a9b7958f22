#pragma once

#include <map>
#include <string>

#include "base/diagnostic.h"
#include "base/files.h"
#include "spec/reader.h"

namespace furnish::test {

/// All that was said, in reading order.
inline std::string said(const DiagnosticSink& sink, const SourceSet& sources) {
  std::string out;
  for (const Diagnostic& one : in_reading_order(sink.all())) out += to_text(one, sources);
  return out;
}

using FileMap = std::map<std::string, std::string>;

/// A salon's folder in memory, and a reader on it.
class Desk {
 public:
  explicit Desk(FileMap files = {})
      : files_(std::move(files)), styles_(context(), "house", "styles") {}

  ReadContext context() { return {files_, sources_, sink_}; }
  StyleLibrary& styles() { return styles_; }
  const DiagnosticSink& sink() const { return sink_; }
  const SourceSet& sources() const { return sources_; }
  std::string said() const { return test::said(sink_, sources_); }
  /// "pets/rex.toml:3" of a span.
  std::string place(SourceSpan span) const {
    return sources_.at(span.file).path() + ":" + std::to_string(span.begin.line);
  }

  std::optional<Pet> pet(std::string text, const Salon* salon = nullptr) {
    return read_pet_text(context(), "pets/rex.toml", std::move(text), salon, styles_);
  }
  std::optional<Salon> salon(std::string text) {
    return read_salon_text(context(), "salon.toml", std::move(text));
  }
  std::optional<Visit> visit(std::string text, const Salon* salon = nullptr,
                             const Pet* pet = nullptr) {
    return read_visit_text(context(), "visits/rex/2026-11-24.toml", std::move(text), salon, pet);
  }
  std::optional<Day> day(std::string text) {
    return read_day_text(context(), "days/2026-11-24.toml", std::move(text));
  }

 private:
  MemoryFiles files_;
  SourceSet sources_;
  DiagnosticSink sink_;
  StyleLibrary styles_;
};
}  // namespace furnish::test
