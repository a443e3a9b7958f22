#pragma once

#include <cerrno>
#include <optional>
#include <string>

#include "base/files.h"
#include "output/disk.h"

namespace furnish::test {

/// How a call fails that is to fail.
struct Failure {
  int code = EIO;          ///< as errno
  bool half = false;       ///< of a write: it takes half of the bytes, and the next one fails
  bool and_after = false;  ///< all calls after it fail too, as of a disk that is gone
};

/// The system's disk, on which one call fails.
class FailingDisk final : public Disk {
 public:
  /// Counts only.
  FailingDisk() = default;
  /// `at`: which of its calls, from 0.
  FailingDisk(int at, Failure failure) : at_(at), failure_(failure) {}
  int calls() const { return calls_; }
  /// As a new one: counts from 0 again.
  void set(std::optional<int> at, Failure failure = {}) {
    calls_ = 0;
    at_ = at;
    failure_ = failure;
  }

  int open(const char* path, int flags, ::mode_t mode) const override {
    return fails() ? -1 : Disk::open(path, flags, mode);
  }
  ::ssize_t write(int fd, const void* bytes, std::size_t size) const override {
    if (!fails()) return Disk::write(fd, bytes, size);
    if (!failure_.half || size < 2) return -1;
    at_ = calls_;  // the rest
    failure_.half = false;
    return Disk::write(fd, bytes, size / 2);
  }
  // The device itself is not waited for, which on a busy computer takes longer than all the rest.
  int fsync(int) const override { return fails() ? -1 : 0; }
  int syncfs(int) const override { return fails() ? -1 : 0; }
  int close(int fd) const override {
    // A descriptor is gone whatever close says.
    const bool failing = fails();
    const int code = errno, closed = Disk::close(fd);
    if (!failing) return closed;
    errno = code;
    return -1;
  }
  int fchmod(int fd, ::mode_t mode) const override { return fails() ? -1 : Disk::fchmod(fd, mode); }
  int rename(const char* from, const char* to) const override {
    return fails() ? -1 : Disk::rename(from, to);
  }
  int rename_to_new(const char* from, const char* to) const override {
    return fails() ? -1 : Disk::rename_to_new(from, to);
  }
  int unlink(const char* path) const override { return fails() ? -1 : Disk::unlink(path); }
  int mkdir(const char* path, ::mode_t mode) const override {
    return fails() ? -1 : Disk::mkdir(path, mode);
  }
  int link(int fd, const char* to) const override { return fails() ? -1 : Disk::link(fd, to); }
  int lstat(const char* path, struct stat* status) const override {
    return fails() ? -1 : Disk::lstat(path, status);
  }
  int stat(const char* path, struct stat* status) const override {
    return fails() ? -1 : Disk::stat(path, status);
  }
  int faccessat(const char* path, int mode) const override {
    return fails() ? -1 : Disk::faccessat(path, mode);
  }

 private:
  bool fails() const {
    const int call = calls_++;
    if (!at_ || (failure_.and_after ? call < *at_ : call != *at_)) return false;
    errno = failure_.code;
    return true;
  }

  mutable int calls_ = 0;
  mutable std::optional<int> at_;
  mutable Failure failure_;
};

/// The disk's files, of which one cannot be read.
class FailingFiles final : public Files {
 public:
  FailingFiles() = default;
  /// `at`: which of the calls that read a file or a folder, from 0.
  explicit FailingFiles(int at) : at_(at) {}
  int calls() const { return calls_; }

  FileContent read_up_to(const std::string& path, std::size_t most) const override {
    if (fails()) return {std::nullopt, "Input/output error"};
    return disk_.read_up_to(path, most);
  }
  bool exists(const std::string& path) const override { return disk_.exists(path); }
  FolderContent list(const std::string& folder) const override {
    if (fails()) return {{}, "Input/output error"};
    return disk_.list(folder);
  }

 private:
  bool fails() const { return calls_++ == at_; }

  DiskFiles disk_;
  mutable int calls_ = 0;
  int at_ = -1;
};
}  // namespace furnish::test
