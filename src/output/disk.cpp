#include "output/disk.h"

#include <fcntl.h>
#include <unistd.h>

#include <cstdio>
#include <string>

namespace furnish {
int Disk::open(const char* path, int flags, ::mode_t mode) const {
  return ::open(path, flags, mode);
}

::ssize_t Disk::write(int fd, const void* bytes, std::size_t size) const {
  return ::write(fd, bytes, size);
}

int Disk::fsync(int fd) const {
  return ::fsync(fd);
}

int Disk::syncfs(int fd) const {
  return ::syncfs(fd);
}

int Disk::close(int fd) const {
  return ::close(fd);
}

int Disk::fchmod(int fd, ::mode_t mode) const {
  return ::fchmod(fd, mode);
}

int Disk::rename(const char* from, const char* to) const {
  return ::rename(from, to);
}

int Disk::rename_to_new(const char* from, const char* to) const {
  return ::renameat2(AT_FDCWD, from, AT_FDCWD, to, RENAME_NOREPLACE);
}

int Disk::unlink(const char* path) const {
  return ::unlink(path);
}

int Disk::mkdir(const char* path, ::mode_t mode) const {
  return ::mkdir(path, mode);
}

int Disk::link(int fd, const char* to) const {
  // Naming a descriptor itself asks for a privilege; its name in /proc does not (openat(2)).
  const std::string open_file = "/proc/self/fd/" + std::to_string(fd);
  return ::linkat(AT_FDCWD, open_file.c_str(), AT_FDCWD, to, AT_SYMLINK_FOLLOW);
}

int Disk::lstat(const char* path, struct stat* status) const {
  return ::lstat(path, status);
}

int Disk::stat(const char* path, struct stat* status) const {
  return ::stat(path, status);
}

int Disk::faccessat(const char* path, int mode) const {
  return ::faccessat(AT_FDCWD, path, mode, AT_EACCESS);
}

const Disk& system_disk() {
  static const Disk disk;
  return disk;
}
}  // namespace furnish
