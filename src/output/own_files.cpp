#include "output/own_files.h"

#include <fmt/format.h>

#include <cerrno>
#include <filesystem>
#include <fstream>
#include <system_error>

#include "output/seal.h"

namespace furnish {
namespace {
/// At most so many of a file's first bytes.
std::string first_bytes(const std::string& path, std::size_t most) {
  std::ifstream file(path, std::ios::binary);
  std::string out(most, '\0');
  file.read(out.data(), static_cast<std::streamsize>(most));
  out.resize(static_cast<std::size_t>(file.gcount()));
  return out;
}
}  // namespace

bool is_own_file(const std::string& path) {
  std::error_code fault;
  if (std::filesystem::file_size(path, fault) > largest_own_file || fault) return false;
  std::ifstream file(path, std::ios::binary);
  SealReader reader;
  std::string stretch(std::size_t{256} << 10, '\0');
  std::uintmax_t left = largest_own_file;
  while (file) {
    file.read(stretch.data(), static_cast<std::streamsize>(stretch.size()));
    const auto got = static_cast<std::size_t>(file.gcount());
    if (got > left) return false;
    left -= got;
    reader.take(std::string_view(stretch).substr(0, got));
  }
  return file.eof() && reader.holds();
}

bool remove_own(const std::string& path, DiagnosticSink& sink, const Disk& disk,
                std::string_view of) {
  constexpr std::size_t looked_at = 4096;
  struct stat there {};
  if (disk.lstat(path.c_str(), &there) != 0) return false;
  std::string why;
  if (!S_ISREG(there.st_mode) || !is_own_file(path)) {
    why = "it is no sheet that furnish wrote and nobody changed";
  } else if (first_bytes(path, looked_at).find(of) == std::string::npos) {
    why = "it is a side of another sheet";
  } else if (disk.unlink(path.c_str()) != 0) {
    why = std::generic_category().message(errno);
  }
  if (!why.empty()) {
    sink.warning("left-over", {},
                 fmt::format("{} is of no sheet that was made now, and stays: {}", path, why));
  }
  return true;
}
}  // namespace furnish
