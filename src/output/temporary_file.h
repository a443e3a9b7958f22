#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "output/disk.h"

namespace furnish {

/// 0, or what went wrong as an errno value.
using Errno = int;

/// An open file of a disk, closed at the latest at the end of its scope.
class Descriptor {
 public:
  Descriptor(const Disk& disk, int fd) : disk_(disk), fd_(fd) {}
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() { close(); }
  int get() const { return fd_; }
  bool open() const { return fd_ >= 0; }
  /// Some file systems tell of a full disk only here.
  Errno close();
  void reset(int fd) {
    close();
    fd_ = fd;
  }

 private:
  const Disk& disk_;
  int fd_;
};

/// Writes all bytes, however many calls that takes; 0, or what went wrong.
Errno write_all(const Disk&, int fd, std::string_view bytes);
/// Waits until the device has it. Pipes and terminals have nothing to wait for, and say EINVAL.
Errno sync(const Disk&, int fd);

/// A new file that is to become one of a folder. It has no name at first where the file system can
/// do so (O_TMPFILE), so that nothing of it stays if the program is killed; else it has one that
/// `clear_unfinished` knows, and is locked while somebody works on it.
class TemporaryFile {
 public:
  /// `like` is an existing file whose permissions it takes, or null.
  TemporaryFile(const Disk&, const std::filesystem::path& folder, const struct stat* like);
  TemporaryFile(const TemporaryFile&) = delete;
  TemporaryFile& operator=(const TemporaryFile&) = delete;
  ~TemporaryFile();

  /// Those of a file that it takes the place of, if they are not the same.
  Errno take_permissions(const struct stat& like);
  /// Its whole content, which is safely on the device afterwards.
  Errno fill(std::string_view bytes);
  /// Its whole content, which only sync_all() of this or another of its folder makes safe.
  Errno write(std::string_view bytes);
  /// Waits until the device has what was written to this one.
  Errno make_safe();
  /// Waits until the device has all that was written to the file system that this lies in.
  Errno sync_all();
  /// Gives it a name where there is nothing yet; EEXIST where there is something.
  Errno become(const std::filesystem::path& target);
  /// Gives it the name of what is there, which it replaces.
  Errno replace(const std::filesystem::path& target);
  /// What went wrong so far.
  Errno fault() const { return fault_; }
  /// file_mark() of it; empty if that is not known.
  std::string mark() const;

 private:
  Errno create_named();

  const Disk& disk_;
  std::filesystem::path folder_;
  std::filesystem::path name_;  ///< empty: it has none
  Descriptor file_;
  Errno fault_ = 0;
};

/// What tells a file from what comes after it: its number, size, rights and times.
std::string mark_of(const struct stat&);

/// Removes the unfinished files that runs which were killed have left in a folder. Those that
/// somebody works on stay; what cannot be removed stays too, and harms nobody.
void clear_unfinished(const Disk&, const std::string& folder);
}  // namespace furnish
