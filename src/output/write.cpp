#include "output/write.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <signal.h>
#include <sys/stat.h>
#include <unistd.h>

#include <atomic>
#include <cerrno>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <optional>
#include <system_error>
#include <utility>

#include "output/seal.h"

namespace furnish {
namespace {
/// 0, or what went wrong as an errno value.
using Errno = int;

/// A POSIX descriptor, closed at the latest at the end of its scope.
class Descriptor {
 public:
  explicit Descriptor(int fd) : fd_(fd) {}
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() { close(); }
  int get() const { return fd_; }
  bool open() const { return fd_ >= 0; }
  /// Some file systems tell of a full disk only here.
  Errno close() {
    const int fd = std::exchange(fd_, -1);
    // After EINTR Linux has closed the descriptor; trying again could close another thread's.
    return fd >= 0 && ::close(fd) != 0 && errno != EINTR ? errno : 0;
  }

 private:
  int fd_;
};

/// Keeps a reader that went away from ending the process: this thread sees EPIPE instead.
class NoBrokenPipeSignal {
 public:
  NoBrokenPipeSignal() {
    ::sigemptyset(&pipe_);
    ::sigaddset(&pipe_, SIGPIPE);
    ::pthread_sigmask(SIG_BLOCK, &pipe_, &before_);
  }
  NoBrokenPipeSignal(const NoBrokenPipeSignal&) = delete;
  NoBrokenPipeSignal& operator=(const NoBrokenPipeSignal&) = delete;
  ~NoBrokenPipeSignal() {
    const timespec no_wait{};
    if (::sigismember(&before_, SIGPIPE) == 0) ::sigtimedwait(&pipe_, nullptr, &no_wait);
    ::pthread_sigmask(SIG_SETMASK, &before_, nullptr);
  }

 private:
  sigset_t pipe_{}, before_{};
};

Errno write_all(int fd, std::string_view bytes) {
  while (!bytes.empty()) {
    const ::ssize_t written = ::write(fd, bytes.data(), bytes.size());
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) return errno;
    if (written == 0) return EIO;
    bytes.remove_prefix(static_cast<std::size_t>(written));
  }
  return 0;
}

/// Waits until the device has it. Pipes and terminals have nothing to wait for, and say EINVAL.
Errno sync(int fd) {
  while (::fsync(fd) != 0) {
    if (errno == EINTR) continue;
    return errno == EINVAL || errno == ENOTSUP || errno == EROFS ? 0 : errno;
  }
  return 0;
}

Errno write_to_standard_output(std::string_view bytes) {
  const NoBrokenPipeSignal quiet;
  const Errno fault = write_all(STDOUT_FILENO, bytes);
  return fault != 0 ? fault : sync(STDOUT_FILENO);
}

/// To a device, a named pipe or a terminal.
Errno write_directly(const std::string& path, std::string_view bytes) {
  const NoBrokenPipeSignal quiet;
  Descriptor target(::open(path.c_str(), O_WRONLY | O_CLOEXEC | O_NOCTTY));
  if (!target.open()) return errno;
  Errno fault = write_all(target.get(), bytes);
  if (fault == 0) fault = sync(target.get());
  const Errno at_close = target.close();
  return fault != 0 ? fault : at_close;
}

/// A new file beside the one it is to become; removed at the end of its scope unless it was moved.
class TemporaryFile {
 public:
  /// `like` is an existing file whose permissions it takes, or null.
  TemporaryFile(const std::filesystem::path& folder, const struct stat* like) {
    static std::atomic<unsigned> count{0};
    do {
      path_ = folder / fmt::format(".furnish-{}-{}.part", ::getpid(), count++);
      file_.emplace(::open(path_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666));
      fault_ = file_->open() ? 0 : errno;
    } while (fault_ == EEXIST);
    if (fault_ == 0 && like != nullptr && ::fchmod(file_->get(), like->st_mode & 07777) != 0) {
      fault_ = errno;
    }
  }
  TemporaryFile(const TemporaryFile&) = delete;
  TemporaryFile& operator=(const TemporaryFile&) = delete;
  ~TemporaryFile() {
    if (file_ && !moved_) ::unlink(path_.c_str());
  }

  Errno fill(std::string_view bytes) {
    if (fault_ == 0) fault_ = write_all(file_->get(), bytes);
    if (fault_ == 0) fault_ = sync(file_->get());
    if (fault_ == 0) fault_ = file_->close();
    return fault_;
  }
  /// A second name for it, which unlike moving fails where there is something.
  Errno link_to(const std::filesystem::path& target) const {
    return ::link(path_.c_str(), target.c_str()) == 0 ? 0 : errno;
  }
  Errno move_to(const std::filesystem::path& target) {
    moved_ = ::rename(path_.c_str(), target.c_str()) == 0;
    return moved_ ? 0 : errno;
  }

 private:
  std::filesystem::path path_;
  std::optional<Descriptor> file_;
  Errno fault_ = 0;
  bool moved_ = false;
};

/// So that the new name, too, survives a power cut. A folder that may not be read cannot be synced.
Errno sync_folder(const std::filesystem::path& folder) {
  const Descriptor opened(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  return opened.open() ? sync(opened.get()) : 0;
}

std::filesystem::path folder_of(const std::filesystem::path& target) {
  return target.has_parent_path() ? target.parent_path() : std::filesystem::path(".");
}

Errno replace_whole(const std::filesystem::path& target, const struct stat* existing,
                    std::string_view bytes) {
  // Renaming needs no right to the old file; its owner wrote-protected it for a reason.
  if (existing != nullptr && ::faccessat(AT_FDCWD, target.c_str(), W_OK, AT_EACCESS) != 0)
    return errno;
  TemporaryFile file(folder_of(target), existing);
  Errno fault = file.fill(bytes);
  if (fault == 0) fault = file.move_to(target);
  return fault != 0 ? fault : sync_folder(folder_of(target));
}

/// For file systems without links, as of memory cards.
Errno create_exclusively(const std::filesystem::path& target, std::string_view bytes) {
  Descriptor file(::open(target.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666));
  if (!file.open()) return errno;
  Errno fault = write_all(file.get(), bytes);
  if (fault == 0) fault = sync(file.get());
  const Errno at_close = file.close();
  if (fault == 0) fault = at_close;
  if (fault != 0) ::unlink(target.c_str());
  return fault;
}

Errno create_whole(const std::filesystem::path& target, std::string_view bytes) {
  struct stat status {};
  if (::lstat(target.c_str(), &status) == 0) return EEXIST;
  TemporaryFile file(folder_of(target), nullptr);
  Errno fault = file.fill(bytes);
  if (fault == 0) fault = file.link_to(target);
  if (fault == EPERM || fault == ENOTSUP) fault = create_exclusively(target, bytes);
  return fault != 0 ? fault : sync_folder(folder_of(target));
}

/// A device, a named pipe or a terminal, also behind a link such as /dev/stdout.
bool takes_a_stream(const std::string& path) {
  struct stat status {};
  return ::stat(path.c_str(), &status) == 0 && !S_ISREG(status.st_mode) && !S_ISDIR(status.st_mode);
}

/// Whether what lies there was written by furnish. What cannot be read was not.
bool is_own(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  const std::string bytes(std::istreambuf_iterator<char>(file), {});
  return file && seal_holds(bytes);
}

/// Why a path may not be written to by an ordinary run; empty: it may.
std::string_view kept_for_its_owner(const std::string& path, const struct stat& there) {
  if (S_ISLNK(there.st_mode)) return "is a link, and a sheet is never written through one";
  if (S_ISREG(there.st_mode) && !is_own(path)) {
    return "is there already, and is no sheet that furnish wrote and nobody changed";
  }
  return {};
}

Errno write_to_path(const std::string& path, std::string_view bytes) {
  if (takes_a_stream(path)) return write_directly(path, bytes);
  struct stat status {};
  if (::lstat(path.c_str(), &status) != 0) {
    return errno == ENOENT ? replace_whole(path, nullptr, bytes) : errno;
  }
  if (S_ISDIR(status.st_mode)) return EISDIR;
  // Moving a file onto a link replaces the link, not what it names.
  return replace_whole(path, S_ISREG(status.st_mode) ? &status : nullptr, bytes);
}

bool to_standard_output(const std::string& path) {
  return path == "-" || path == "/dev/stdout";
}

bool report(const std::string& path, Errno fault, DiagnosticSink& sink) {
  if (fault == 0) return true;
  sink.error(
      "cannot-write", {},
      fmt::format("cannot write {}: {}",
                  to_standard_output(path) ? "to the standard output" : "'" + path + "'",
                  fault == EISDIR ? "it is a folder" : std::system_category().message(fault)));
  return false;
}
}  // namespace

bool write_whole(const std::string& path, std::string_view bytes, Replaces replaces,
                 DiagnosticSink& sink) {
  if (to_standard_output(path)) return report(path, write_to_standard_output(bytes), sink);
  struct stat there {};
  if (replaces == Replaces::own && !takes_a_stream(path) && ::lstat(path.c_str(), &there) == 0) {
    if (const std::string_view why = kept_for_its_owner(path, there); !why.empty()) {
      sink.error("not-ours", {}, fmt::format("'{}' {}; it is left as it is", path, why)).hint =
          "choose another name, or --force if it may be replaced";
      return false;
    }
  }
  return report(path, write_to_path(path, bytes), sink);
}

bool is_a_file(const std::string& path) {
  return !to_standard_output(path) && !takes_a_stream(path);
}

bool write_new(const std::string& path, std::string_view bytes, DiagnosticSink& sink) {
  if (to_standard_output(path)) return write_whole(path, bytes, Replaces::own, sink);
  const Errno fault = create_whole(path, bytes);
  if (fault != EEXIST) return report(path, fault, sink);
  std::error_code ignored;
  const bool folder = std::filesystem::is_directory(path, ignored);
  sink.error("exists", {},
             fmt::format("'{}' is there already{}", path,
                         folder ? ", and is a folder" : "; it is left as it is"))
      .hint = folder ? "name the file too" : "choose another name";
  return false;
}
}  // namespace furnish
