#pragma once

#include <chrono>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace furnish::desk {

/// Notices when files of a salon's folder change, whoever changes them and however an editor saves:
/// in place, beside and renamed, over a backup. Its folders are watched, not its files; once they
/// were still for a moment, contents are compared, so that a save of the same text is none.
/// A folder on a network tells nothing of what other computers do there.
class Watch {
 public:
  using Clock = std::chrono::steady_clock;
  using Milliseconds = std::chrono::milliseconds;
  static constexpr Milliseconds stillness{30};

  /// `root`: the salon's folder. `still`: for how long nothing may have happened before it is
  /// looked what did. If the system lets nothing be watched, nothing is ever noticed.
  explicit Watch(std::string root, Milliseconds still = stillness);
  Watch(const Watch&) = delete;
  Watch& operator=(const Watch&) = delete;
  ~Watch();

  /// For poll(); -1 if nothing can be watched.
  int descriptor() const { return fd_; }
  /// Notes what the system has to say, without waiting.
  void take(Clock::time_point now);
  /// Another file, as "photos/marlow.jpg" under whatever folder: told by that path when it comes,
  /// goes or is replaced, by its size and times. Of one whose folder is not there yet that
  /// is told too when it comes.
  void follow(const std::string& path);
  /// Folders that are there and cannot be watched, each once, with why not.
  std::map<std::string, std::string> unwatched() { return std::exchange(unwatched_, {}); }
  /// When settled() has something to look at.
  std::optional<Clock::time_point> due() const { return due_; }
  /// Files that are there, gone or another since the last call, as "pets/marlow.toml"; none until
  /// the folders were still.
  std::vector<std::string> settled(Clock::time_point now);

 private:
  void watch(const std::string& folder);
  void look_into(const std::string& folder);
  /// After changes of which the system has told nothing: every file may be another.
  void touch_all();
  void not_watched(const std::string& folder, int fault);
  void let_go(int number);
  void note(int number, const std::string& name, bool is_folder, bool came);
  /// The file's mark; empty: it is not there.
  std::string mark(const std::string& name) const;

  std::string root_;
  Milliseconds still_;
  int fd_;
  std::map<int, std::string> folders_;  ///< by the system's number; "" is the salon's own
  std::map<int, std::map<std::string, std::string>> followed_;  ///< paths by the file's own name
  std::set<std::string> others_;                                ///< all those paths
  std::map<std::string, std::string> unwatched_;
  std::set<std::string> unwatched_before_;  ///< those, and all that were told
  std::set<std::string> awaited_;           ///< paths in folders that are not there yet
  std::set<std::string> touched_;
  std::map<std::string, std::string> marks_;  ///< of files that were looked at
  std::optional<Clock::time_point> due_;
};
}  // namespace furnish::desk
