#include "desk/watch.h"

#include <sys/inotify.h>
#include <unistd.h>

#include <algorithm>
#include <array>
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
  if (number >= 0) folders_[number] = folder;
}

void Watch::look_into(const std::string& folder) {
  watch(folder);
  std::error_code fault;
  for (fs::directory_iterator it(below(root_, folder), fault), end; !fault && it != end;
       it.increment(fault)) {
    const std::string name = it->path().filename().string();
    if (it->is_directory(fault)) {
      if (ours(below(folder, name))) look_into(below(folder, name));
    } else if (is_toml(name)) {
      touched_.insert(below(folder, name));
    }
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
      const auto folder = folders_.find(event.wd);
      if (folder == folders_.end()) continue;
      if ((event.mask & IN_IGNORED) != 0) {
        folders_.erase(folder);
        continue;
      }
      if (event.len == 0) continue;
      const std::string path = below(folder->second, name);
      if ((event.mask & IN_ISDIR) != 0) {
        if ((event.mask & (IN_CREATE | IN_MOVED_TO)) != 0 && ours(path)) look_into(path);
      } else if (is_toml(name) && (folder->second.empty() ? path == "salon.toml" : true)) {
        touched_.insert(path);
      }
      due_ = now + still_;
    }
  }
}

std::string Watch::mark(const std::string& name) const {
  const FileContent content = DiskFiles().read(below(root_, name));
  return content.bytes ? mark_of(*content.bytes) : content.fault;
}

std::vector<std::string> Watch::settled(Clock::time_point now) {
  std::vector<std::string> out;
  if (!due_ || now < *due_) return out;
  due_.reset();
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
