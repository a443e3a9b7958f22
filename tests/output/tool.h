#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace furnish::test {

/// A folder of its own that vanishes with all in it.
class TemporaryFolder {
 public:
  TemporaryFolder();
  ~TemporaryFolder();
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;
  std::string path(std::string_view name) const;
  /// Writes a file and gives its path.
  std::string file(std::string_view name, std::string_view bytes) const;

 private:
  std::string folder_;
};

std::string bytes_of(const std::string& path);

/// The first group of each match of a regular expression.
std::vector<std::string> matches(const std::string& text, const std::string& pattern);
/// What stands between white space.
std::vector<std::string> words_of(const std::string& text);

struct ToolOutput {
  int status;  ///< of the process; -1 if it did not end by itself
  std::string out, err;
};
/// Runs a shell command. A missing program fails the test and says which package has it.
ToolOutput run(const std::string& command);
}  // namespace furnish::test
