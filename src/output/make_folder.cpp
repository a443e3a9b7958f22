#include "output/make_folder.h"

#include <fmt/format.h>
#include <sys/stat.h>

#include <cerrno>
#include <filesystem>
#include <system_error>

#include "output/temporary_file.h"

namespace furnish {
namespace {
bool make_folder(const std::string& path, ::mode_t mode, DiagnosticSink& sink, const Disk& disk) {
  std::filesystem::path made;
  for (const std::filesystem::path& part : std::filesystem::path(path)) {
    made /= part;
    struct stat status {};
    if (disk.stat(made.c_str(), &status) == 0 && S_ISDIR(status.st_mode)) continue;
    // Another program may have made it meanwhile.
    if (disk.mkdir(made.c_str(), mode) == 0 ||
        (errno == EEXIST && disk.stat(made.c_str(), &status) == 0 && S_ISDIR(status.st_mode))) {
      continue;
    }
    const Errno fault = errno;
    sink.error(
        "write", {},
        fmt::format("cannot make the folder {}: {}", path, std::system_category().message(fault)));
    return false;
  }
  clear_unfinished(disk, path);
  return true;
}
}  // namespace

bool make_folder(const std::string& path, DiagnosticSink& sink, const Disk& disk) {
  return make_folder(path, 0777, sink, disk);
}

bool make_private_folder(const std::string& path, DiagnosticSink& sink, const Disk& disk) {
  return make_folder(path, 0700, sink, disk);
}
}  // namespace furnish
