#include "desk/watch.h"

#include <fmt/format.h>
#include <sys/inotify.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <system_error>
#include <utility>

#include "base/files.h"
#include "desk/mark.h"

namespace furnish::desk {
namespace {
namespace fs = std::filesystem;

constexpr std::uint32_t events = IN_CLOSE_WRITE | IN_MOVED_TO | IN_MOVED_FROM | IN_DELETE |
                                 IN_CREATE | IN_ONLYDIR | IN_EXCL_UNLINK;
/// Folders of a salon in which its files lie. Each pet has one more, under the last.
constexpr std::array<const char*, 5> watched{"pets", "days", "styles", "styles/words", "visits"};

std::string below(const std::string& folder, const std::string& name) {
  return folder.empty() ? name : folder + "/" + name;
}

/// Whether a folder of this name is the salon's affair: not what other programs keep beside it.
bool ours(const std::string& folder) {
  return std::ranges::find(watched, folder) != watched.end() ||
         (folder.starts_with("visits/") && std::ranges::count(folder, '/') == 1);
}

/// What readers of TOML files would see: no swap file, no backup, nothing hidden.
bool is_toml(const std::string& name) {
  return name.ends_with(".toml") && !name.starts_with('.');
}

/// The salon's own folder holds one that counts.
bool is_file_of(const std::string& folder, const std::string& name) {
  return folder.empty() ? name == "salon.toml" : is_toml(name);
}
}  // namespace

Watch::Watch(std::string root, Milliseconds still)
    : root_(std::move(root)), still_(still), fd_(::inotify_init1(IN_NONBLOCK | IN_CLOEXEC)) {
  if (fd_ < 0) return;
  watch("");
  for (const char* const folder : watched) watch(folder);
  std::error_code fault;
  for (fs::directory_iterator it(root_ + "/visits", fault), end; !fault && it != end;
       it.increment(fault)) {
    if (it->is_directory(fault)) watch("visits/" + it->path().filename().string());
  }
}

Watch::~Watch() {
  if (fd_ >= 0) ::close(fd_);
}

void Watch::watch(const std::string& folder) {
  const int number = ::inotify_add_watch(fd_, below(root_, folder).c_str(), events);
  if (number >= 0) {
    folders_[number] = folder;
    return;
  }
  not_watched(folder.empty() ? root_ : below(root_, folder), errno);
}

void Watch::not_watched(const std::string& folder, int fault) {
  if (fault == ENOENT || fault == ENOTDIR || !unwatched_before_.insert(folder).second) return;
  unwatched_[folder] = std::generic_category().message(fault);
}

void Watch::follow(const std::string& path) {
  if (fd_ < 0 || !others_.insert(path).second) return;
  const fs::path file(path);
  const std::string folder = file.has_parent_path() ? file.parent_path().string() : ".";
  // One that is the salon's own keeps its number.
  const int number = ::inotify_add_watch(fd_, folder.c_str(), events);
  if (number >= 0) {
    followed_[number][file.filename().string()] = path;
    if (awaited_.erase(path) == 0) return;
    // It may have come before its folder was watched.
    touched_.insert(path);
    due_ = Clock::now() + still_;
    return;
  }
  const int fault = errno;
  others_.erase(path);
  not_watched(folder, fault);
  if (fault != ENOENT) return;
  awaited_.insert(path);
  follow(folder);
}

void Watch::look_into(const std::string& folder) {
  watch(folder);
  std::error_code fault;
  for (fs::directory_iterator it(below(root_, folder), fault), end; !fault && it != end;
       it.increment(fault)) {
    const std::string name = it->path().filename().string();
    if (it->is_directory(fault)) {
      if (ours(below(folder, name))) look_into(below(folder, name));
    } else if (is_file_of(folder, name)) {
      touched_.insert(below(folder, name));
    }
  }
}

void Watch::touch_all() {
  look_into("");
  for (const auto& [name, mark] : marks_) touched_.insert(name);
  touched_.insert(others_.begin(), others_.end());
}

void Watch::note(int number, const std::string& name, bool is_folder, bool came) {
  if (const auto files = followed_.find(number); files != followed_.end()) {
    const auto file = files->second.find(name);
    if (file != files->second.end()) touched_.insert(file->second);
  }
  const auto folder = folders_.find(number);
  if (folder == folders_.end()) return;
  const std::string path = below(folder->second, name);
  if (is_folder) {
    if (came && ours(path)) look_into(path);
  } else if (is_file_of(folder->second, name)) {
    touched_.insert(path);
  }
}

void Watch::take(Clock::time_point now) {
  alignas(inotify_event) std::array<char, 16384> bytes{};
  while (true) {
    const ::ssize_t size = ::read(fd_, bytes.data(), bytes.size());
    if (size <= 0) return;
    for (::ssize_t at = 0; at < size;) {
      inotify_event event{};
      std::memcpy(&event, bytes.data() + at, sizeof event);
      const char* const name = bytes.data() + at + sizeof event;
      at += static_cast<::ssize_t>(sizeof event + event.len);
      if ((event.mask & IN_Q_OVERFLOW) != 0) {
        touch_all();
        due_ = now + still_;
        continue;
      }
      if (!folders_.contains(event.wd) && !followed_.contains(event.wd)) continue;
      if ((event.mask & IN_IGNORED) != 0) {
        let_go(event.wd);
        continue;
      }
      if (event.len == 0) continue;
      note(event.wd, name, (event.mask & IN_ISDIR) != 0,
           (event.mask & (IN_CREATE | IN_MOVED_TO)) != 0);
      due_ = now + still_;
    }
  }
}

void Watch::let_go(int number) {
  folders_.erase(number);
  // When its folder is there again they can be followed again.
  if (const auto gone = followed_.extract(number)) {
    for (const auto& [name, path] : gone.mapped()) {
      others_.erase(path);
      marks_.erase(path);
    }
  }
}

std::string Watch::mark(const std::string& name) const {
  if (others_.contains(name)) {
    struct stat status {};
    if (::stat(name.c_str(), &status) != 0) return {};
    return fmt::format("{}.{}.{}.{}.{}.{}", status.st_ino, status.st_size, status.st_mtim.tv_sec,
                       status.st_mtim.tv_nsec, status.st_ctim.tv_sec, status.st_ctim.tv_nsec);
  }
  const FileContent content = DiskFiles().read(below(root_, name));
  return content.bytes ? mark_of(*content.bytes) : content.fault;
}

std::vector<std::string> Watch::settled(Clock::time_point now) {
  std::vector<std::string> out;
  if (!due_ || now < *due_) return out;
  due_.reset();
  for (const std::string& path : std::set(awaited_)) follow(path);  // its folder may be there now
  for (const std::string& name : std::exchange(touched_, {})) {
    std::string now_marked = mark(name);
    const auto [known, is_new] = marks_.try_emplace(name);
    if (!is_new && known->second == now_marked) continue;
    known->second = std::move(now_marked);
    out.push_back(name);
  }
  return out;
}
}  // namespace furnish::desk
