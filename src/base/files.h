#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace furnish {

/// What reading a file gave: its bytes, or why not, in words for a person ("is a directory").
struct FileContent {
  std::optional<std::string> bytes;
  std::string fault;
};

/// Where files come from. The program reads the disk, tests hold files in memory.
class Files {
 public:
  /// A hand-written file is a few kilobytes; beyond this it is something else.
  static constexpr std::size_t largest = std::size_t{64} * 1024;

  virtual ~Files() = default;
  /// Regular files of at most `largest` bytes; anything else is a fault.
  virtual FileContent read(const std::string& path) const = 0;
  virtual bool exists(const std::string& path) const = 0;
  /// Names (not paths) of the entries of a folder that end in `.toml` and do not begin with a dot,
  /// sorted by bytes; empty if there is no such folder.
  virtual std::vector<std::string> toml_files(const std::string& folder) const = 0;
};

/// A regular file of the disk with at most `most` bytes, for what is not written by hand: a PDF, a
/// photo. Anything else is a fault; a pipe is refused, not waited for.
FileContent read_from_disk(const std::string& path, std::size_t most);

class DiskFiles final : public Files {
 public:
  FileContent read(const std::string& path) const override;
  bool exists(const std::string& path) const override;
  std::vector<std::string> toml_files(const std::string& folder) const override;
};

class MemoryFiles final : public Files {
 public:
  explicit MemoryFiles(std::map<std::string, std::string> files) : files_(std::move(files)) {}
  FileContent read(const std::string& path) const override;
  bool exists(const std::string& path) const override { return files_.contains(path); }
  std::vector<std::string> toml_files(const std::string& folder) const override;

 private:
  std::map<std::string, std::string> files_;
};
}  // namespace furnish
