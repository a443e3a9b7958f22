#pragma once

#include <map>
#include <string>
#include <vector>

#include "base/diagnostic.h"

namespace furnish::test {

/// One file of tests/spec/faults: a faulty file of a salon with what the reader must say about it,
/// in comments at its end. The file's name begins with what it is: salon-, pet-, style-, visit-,
/// day-.
///
/// A line "#= styles/b.toml" begins another file of the same salon (salon.toml, a style, the
/// visit's pets/rex.toml); places are counted from the line after it. Lines that begin with "#!"
/// hold the expected text, whole and in reading order.
struct FaultCase {
  std::string path;                          ///< of the file on disk
  std::string main;                          ///< which of `files` is read: "pets/rex.toml"
  std::map<std::string, std::string> files;  ///< by their paths in the salon's folder
  std::string body;                          ///< all before the expected text
  std::string expected;
};

FaultCase load_fault_case(const std::string& path);

/// What the reader said, and whether it gave a value all the same.
struct Reading {
  std::string said;
  bool value = false;
};
/// `errors` gets those of the main file, in reading order.
Reading read_fault_case(const FaultCase&, std::vector<Diagnostic>* errors = nullptr);

/// Writes the file again, with `said` as its expected text.
void approve(const FaultCase&, const std::string& said);
}  // namespace furnish::test
