#pragma once

#include <optional>
#include <string>

#include "base/diagnostic.h"
#include "output/disk.h"

namespace furnish::desk {

/// A file that leads a browser to the desk, and that nobody but its owner may read: so that the
/// desk's address, whose token lets in whoever knows it, is in no list of processes. It goes with
/// this object.
class StartPage {
 public:
  /// In XDG_RUNTIME_DIR, else in a folder of its own under the temporary one. Null iff an error was
  /// reported.
  static std::optional<StartPage> write(const std::string& address, DiagnosticSink&, const Disk&);
  StartPage(StartPage&&) noexcept;
  StartPage& operator=(StartPage&&) = delete;
  ~StartPage();
  const std::string& path() const { return path_; }

 private:
  StartPage(std::string path, std::string folder, const Disk& disk);
  std::string path_;
  std::string folder_;  ///< that was made for it; empty: none
  const Disk* disk_;
};
}  // namespace furnish::desk
