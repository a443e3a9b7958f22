#include "base/files.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <system_error>

namespace furnish {
namespace {
/// Closes a POSIX descriptor at the end of its scope.
class Descriptor {
 public:
  explicit Descriptor(int fd) : fd_(fd) {}
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() {
    if (fd_ >= 0) ::close(fd_);
  }
  int get() const { return fd_; }

 private:
  int fd_;
};

FileContent failed(int code) {
  return {std::nullopt, std::system_category().message(code)};
}

FileContent too_large(std::size_t size, std::size_t most) {
  const std::size_t kib = most / 1024;
  return {std::nullopt, fmt::format("has {} bytes; at most {} ({} {}) are read", size, most,
                                    kib < 1024 ? kib : kib / 1024, kib < 1024 ? "KiB" : "MiB")};
}

/// True if the system said that there is nothing of that name.
bool absent(int code) {
  return code == ENOENT || code == ENOTDIR;
}

bool is_toml(const std::string& name) {
  return name.size() > 5 && name.ends_with(".toml") && name.front() != '.';
}
}  // namespace

FileContent DiskFiles::read_up_to(const std::string& path, std::size_t most) const {
  // O_NONBLOCK, so that a named pipe is refused instead of waited for.
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
  struct stat status {};
  if (file.get() < 0 || ::fstat(file.get(), &status) != 0) return failed(errno);
  if (S_ISDIR(status.st_mode)) return {std::nullopt, "is a folder, not a file"};
  if (!S_ISREG(status.st_mode)) return {std::nullopt, "is not a regular file"};
  const auto size = static_cast<std::size_t>(status.st_size);
  if (size > most) return too_large(size, most);
  std::string bytes(size + 1, '\0');
  std::size_t filled = 0;
  while (filled <= most) {
    // It has grown since, or is one that never says its size.
    if (filled == bytes.size()) bytes.resize(std::min(2 * bytes.size(), most + 1));
    const ::ssize_t got = ::read(file.get(), bytes.data() + filled, bytes.size() - filled);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return failed(errno);
    if (got == 0) break;
    filled += static_cast<std::size_t>(got);
  }
  if (filled > most) return too_large(filled, most);
  bytes.resize(filled);
  struct stat named {};
  const bool link = ::lstat(path.c_str(), &named) == 0 && S_ISLNK(named.st_mode);
  return {std::move(bytes), {}, link};
}

std::string Files::place(const std::string& path) const {
  std::error_code fault;
  const auto whole = std::filesystem::absolute(path, fault);
  const auto out = std::filesystem::weakly_canonical(whole, fault);
  return fault ? "" : out.string();
}

bool DiskFiles::exists(const std::string& path) const {
  struct stat status {};
  return ::stat(path.c_str(), &status) == 0 || !absent(errno);
}

FolderContent DiskFiles::list(const std::string& folder) const {
  std::vector<std::string> names;
  std::error_code fault;
  for (std::filesystem::directory_iterator it(folder, fault), end; !fault && it != end;
       it.increment(fault)) {
    if (std::string name = it->path().filename().string(); is_toml(name)) {
      names.push_back(std::move(name));
    }
  }
  // Half a folder is none: what is missing may be what counts.
  if (fault && !absent(fault.value())) return {{}, fault.message()};
  std::ranges::sort(names);
  return {std::move(names), {}};
}

FileContent MemoryFiles::read_up_to(const std::string& path, std::size_t most) const {
  const auto found = files_.find(path);
  if (found == files_.end()) return failed(ENOENT);
  if (found->second.size() > most) return too_large(found->second.size(), most);
  return {found->second, {}};
}

FolderContent MemoryFiles::list(const std::string& folder) const {
  const std::string prefix = folder + "/";
  std::vector<std::string> names;
  for (const auto& [path, text] : files_) {
    if (!path.starts_with(prefix)) continue;
    const std::string name = path.substr(prefix.size());
    if (name.find('/') == std::string::npos && is_toml(name)) names.push_back(name);
  }
  return {std::move(names), {}};
}
}  // namespace furnish
