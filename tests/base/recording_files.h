#pragma once

#include <algorithm>
#include <cstdint>
#include <map>
#include <string>

#include "base/files.h"

namespace furnish::test {

/// Passes everything on to other files and notes what was asked for, so that a test knows what a
/// result was made from. For one thread.
class RecordingFiles final : public Files {
 public:
  /// The most that is known of a path, in rising order.
  enum class Found : std::uint8_t {
    absent,   ///< asked for, and not there or not to be read
    seen,     ///< is there; what it holds was not asked
    listed,   ///< a folder whose TOML files were asked for, there or not
    contents  ///< read
  };

  /// Keeps the reference.
  explicit RecordingFiles(const Files& files) : files_(files) {}
  FileContent read_up_to(const std::string& path, std::size_t most) const override {
    FileContent content = files_.read_up_to(path, most);
    note(path, content.bytes ? Found::contents : Found::absent);
    return content;
  }
  bool exists(const std::string& path) const override {
    const bool there = files_.exists(path);
    note(path, there ? Found::seen : Found::absent);
    return there;
  }
  FolderContent list(const std::string& folder) const override {
    note(folder, Found::listed);
    return files_.list(folder);
  }

  /// By path, as it was asked for.
  const std::map<std::string, Found>& asked() const { return asked_; }

 private:
  void note(const std::string& path, Found found) const {
    const auto [place, is_new] = asked_.try_emplace(path, found);
    if (!is_new) place->second = std::max(place->second, found);
  }
  const Files& files_;
  mutable std::map<std::string, Found> asked_;
};
}  // namespace furnish::test
