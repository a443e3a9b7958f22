#pragma once

#include <sys/stat.h>
#include <sys/types.h>

#include <cstddef>

namespace furnish {

/// The system's calls through which all that furnish writes goes, each as POSIX has it: what it
/// gives, or -1 with errno set. The program uses the system's own; a test stands a disk in between
/// on which any call fails when it says so.
class Disk {
 public:
  virtual ~Disk() = default;
  virtual int open(const char* path, int flags, ::mode_t mode) const;
  virtual ::ssize_t write(int fd, const void* bytes, std::size_t size) const;
  virtual int fsync(int fd) const;
  /// The same of all that was written to the file system that an open file lies in.
  virtual int syncfs(int fd) const;
  virtual int close(int fd) const;
  virtual int fchmod(int fd, ::mode_t mode) const;
  virtual int rename(const char* from, const char* to) const;
  /// The same where nothing of that name may be yet (renameat2 with RENAME_NOREPLACE).
  virtual int rename_to_new(const char* from, const char* to) const;
  virtual int unlink(const char* path) const;
  virtual int mkdir(const char* path, ::mode_t mode) const;
  /// A second name for an open file (linkat), which fails where there is something.
  virtual int link(int fd, const char* to) const;
  virtual int lstat(const char* path, struct stat* status) const;
  virtual int stat(const char* path, struct stat* status) const;
  virtual int faccessat(const char* path, int mode) const;
};

/// The system's own.
const Disk& system_disk();
}  // namespace furnish
