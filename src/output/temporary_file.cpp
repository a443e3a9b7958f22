#include "output/temporary_file.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <unistd.h>

#include <atomic>
#include <cerrno>
#include <system_error>
#include <utility>

namespace furnish {
namespace {
namespace fs = std::filesystem;

/// A name that no other file of a running program has; two programs never have one number.
fs::path unfinished_name(const fs::path& folder) {
  static std::atomic<unsigned> count{0};
  return folder / fmt::format(".furnish-{}-{}.part", ::getpid(), count++);
}

bool is_unfinished(const std::string& name) {
  return name.starts_with(".furnish-") && name.ends_with(".part");
}

/// Whether a file without a name can be given one; see Disk::link.
bool names_can_be_given() {
  static const bool can = ::access("/proc/self/fd", X_OK) == 0;
  return can;
}

/// Whether nobody else works on it. The lock goes when its file is closed, or the program ends.
bool lock(int fd) {
  return ::flock(fd, LOCK_EX | LOCK_NB) == 0;
}

/// Whether a file has lost its name meanwhile.
bool nameless(int fd) {
  struct stat status {};
  return ::fstat(fd, &status) == 0 && status.st_nlink == 0;
}
}  // namespace

Errno Descriptor::close() {
  const int fd = std::exchange(fd_, -1);
  // After EINTR Linux has closed the descriptor; trying again could close another thread's.
  return fd >= 0 && disk_.close(fd) != 0 && errno != EINTR ? errno : 0;
}

Errno write_all(const Disk& disk, int fd, std::string_view bytes) {
  while (!bytes.empty()) {
    const ::ssize_t written = disk.write(fd, bytes.data(), bytes.size());
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) return errno;
    if (written == 0) return EIO;
    bytes.remove_prefix(static_cast<std::size_t>(written));
  }
  return 0;
}

Errno sync(const Disk& disk, int fd) {
  while (disk.fsync(fd) != 0) {
    if (errno == EINTR) continue;
    return errno == EINVAL || errno == ENOTSUP || errno == EROFS ? 0 : errno;
  }
  return 0;
}

TemporaryFile::TemporaryFile(const Disk& disk, const fs::path& folder, const struct stat* like)
    : disk_(disk), folder_(folder), file_(disk, -1) {
  errno = EOPNOTSUPP;
  if (names_can_be_given()) {
    file_.reset(disk.open(folder.c_str(), O_WRONLY | O_TMPFILE | O_CLOEXEC, 0666));
  }
  // A kernel that does not know the flag sees a folder that is opened for writing.
  if (!file_.open()) fault_ = errno == EOPNOTSUPP || errno == EISDIR ? create_named() : errno;
  if (fault_ == 0 && like != nullptr && disk_.fchmod(file_.get(), like->st_mode & 07777) != 0) {
    fault_ = errno;
  }
}

TemporaryFile::~TemporaryFile() {
  // While it is still locked, so that nobody else clears it and its number is not met twice.
  if (!name_.empty()) disk_.unlink(name_.c_str());
}

Errno TemporaryFile::create_named() {
  while (true) {
    name_ = unfinished_name(folder_);
    file_.reset(disk_.open(name_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666));
    if (!file_.open()) {
      name_.clear();
      if (errno == EEXIST) continue;
      return errno;
    }
    // Who clears up may have come between the two, and then it is gone.
    if (lock(file_.get()) && !nameless(file_.get())) return 0;
  }
}

Errno TemporaryFile::take_permissions(const struct stat& like) {
  struct stat status {};
  const bool same =
      ::fstat(file_.get(), &status) == 0 && ((status.st_mode ^ like.st_mode) & 07777) == 0;
  return same || disk_.fchmod(file_.get(), like.st_mode & 07777) == 0 ? 0 : errno;
}

Errno TemporaryFile::write(std::string_view bytes) {
  if (fault_ == 0) fault_ = write_all(disk_, file_.get(), bytes);
  return fault_;
}

Errno TemporaryFile::make_safe() {
  if (fault_ == 0) fault_ = sync(disk_, file_.get());
  return fault_;
}

Errno TemporaryFile::sync_all() {
  while (disk_.syncfs(file_.get()) != 0) {
    if (errno != EINTR) return errno;
  }
  return 0;
}

Errno TemporaryFile::fill(std::string_view bytes) {
  write(bytes);
  return make_safe();
}

Errno TemporaryFile::become(const fs::path& target) {
  if (disk_.link(file_.get(), target.c_str()) == 0) return 0;
  const bool no_links = errno == EPERM || errno == ENOTSUP;
  if (!no_links || name_.empty()) return errno;
  // As on memory cards, whose file system has no second names.
  if (disk_.rename_to_new(name_.c_str(), target.c_str()) != 0) return errno;
  name_.clear();
  return 0;
}

Errno TemporaryFile::replace(const fs::path& target) {
  if (name_.empty()) {
    lock(file_.get());
    name_ = unfinished_name(folder_);
    while (disk_.link(file_.get(), name_.c_str()) != 0) {
      const Errno fault = errno;
      name_ = unfinished_name(folder_);
      if (fault == EEXIST) continue;
      name_.clear();
      return fault;
    }
  }
  if (disk_.rename(name_.c_str(), target.c_str()) != 0) return errno;
  name_.clear();
  return 0;
}

std::string TemporaryFile::mark() const {
  struct stat status {};
  return file_.get() >= 0 && ::fstat(file_.get(), &status) == 0 ? mark_of(status) : std::string();
}

std::string mark_of(const struct stat& status) {
  return fmt::format("{:x}.{:x}.{:o}.{:x}.{:x}.{:x}.{:x}", status.st_ino, status.st_size,
                     status.st_mode, status.st_mtim.tv_sec, status.st_mtim.tv_nsec,
                     status.st_ctim.tv_sec, status.st_ctim.tv_nsec);
}

void clear_unfinished(const Disk& disk, const std::string& folder) {
  std::error_code fault;
  const fs::path here = folder.empty() ? "." : folder;
  for (fs::directory_iterator it(here, fault), end; !fault && it != end; it.increment(fault)) {
    if (!is_unfinished(it->path().filename().string())) continue;
    const std::string path = it->path().string();
    const Descriptor file(
        disk, disk.open(path.c_str(), O_RDONLY | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC, 0));
    if (file.open() && lock(file.get())) disk.unlink(path.c_str());
  }
}
}  // namespace furnish
