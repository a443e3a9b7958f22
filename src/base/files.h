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
  /// The name is a link's: what it leads to may be no file of the salon's at all.
  bool through_link = false;
};

/// What is in a folder: names, or why it cannot be said, in words for a person. A folder that is
/// not there has none, and that is no fault.
struct FolderContent {
  std::vector<std::string> names;
  std::string fault;
};

/// Where files come from: all that a run reads passes through here. The program reads the disk,
/// tests hold files in memory.
class Files {
 public:
  /// A hand-written file is a few kilobytes; beyond this it is something else.
  static constexpr std::size_t largest = std::size_t{64} * 1024;

  virtual ~Files() = default;
  /// A regular file of at most `largest` bytes; anything else is a fault.
  FileContent read(const std::string& path) const { return read_up_to(path, largest); }
  /// A regular file of at most `most` bytes, for what is not written by hand: a PDF, a photo.
  /// Anything else is a fault; a pipe is refused, not waited for.
  virtual FileContent read_up_to(const std::string& path, std::size_t most) const = 0;
  /// False only if it is known that there is none: what cannot be looked at is there, so that
  /// reading it says why not.
  virtual bool exists(const std::string& path) const = 0;
  /// The path with every link in it followed, as far as there is something; empty where nobody can
  /// tell. What is made of the answer hangs on it as on a file's bytes.
  virtual std::string place(const std::string& path) const;
  /// Names (not paths) of the entries of a folder that end in `.toml` and do not begin with a dot,
  /// sorted by bytes.
  virtual FolderContent list(const std::string& folder) const = 0;
  /// The same for whom a folder that cannot be read is as good as none.
  std::vector<std::string> toml_files(const std::string& folder) const {
    return list(folder).names;
  }
};

class DiskFiles final : public Files {
 public:
  FileContent read_up_to(const std::string& path, std::size_t most) const override;
  bool exists(const std::string& path) const override;
  FolderContent list(const std::string& folder) const override;
};

class MemoryFiles final : public Files {
 public:
  explicit MemoryFiles(std::map<std::string, std::string> files) : files_(std::move(files)) {}
  FileContent read_up_to(const std::string& path, std::size_t most) const override;
  bool exists(const std::string& path) const override { return files_.contains(path); }
  FolderContent list(const std::string& folder) const override;

 private:
  std::map<std::string, std::string> files_;
};
}  // namespace furnish
