#pragma once

#include <map>
#include <string>

#include "base/files.h"
#include "spec/context.h"

namespace furnish::fuzz {

using Texts = std::map<std::string, std::string>;

/// Some texts before others that are the same in every run, so that nothing is copied for one.
class TextsBefore final : public Files {
 public:
  TextsBefore(Texts own, const Texts& others) : own_(std::move(own)), others_(others) {}
  FileContent read_up_to(const std::string& path, std::size_t most) const override;
  bool exists(const std::string& path) const override {
    return own_.contains(path) || others_.contains(path);
  }
  FolderContent list(const std::string& folder) const override;

 private:
  Texts own_;
  const Texts& others_;
};

/// Two styles that extend each other's parts: shipped/natural-tidy.toml and styles/own.toml.
const Texts& two_styles();

/// Words what was reported, as a terminal gets it: nothing in it steers one.
void tell(const DiagnosticSink&, const SourceSet&);

/// A salon in memory: what is given, and `others`.
struct Reading {
  explicit Reading(Texts more = {}, const Texts& others = two_styles())
      : files(std::move(more), others) {}
  TextsBefore files;
  SourceSet sources;
  DiagnosticSink sink;
  ReadContext context{files, sources, sink};

  void tell() const { fuzz::tell(sink, sources); }
};
}  // namespace furnish::fuzz
