#include "app/data_folder.h"

#include <filesystem>
#include <system_error>

namespace furnish {
namespace fs = std::filesystem;

std::string find_data_folder(const std::string& asked) {
  if (!asked.empty()) return asked;
  std::error_code fault;
  const fs::path program = fs::read_symlink("/proc/self/exe", fault);
  const fs::path beside = program.parent_path().parent_path() / FURNISH_DATA_FROM_PREFIX;
  if (fs::is_directory(beside / "fonts", fault)) return beside.string();
#ifdef FURNISH_SOURCE_DATA
  if (fs::is_directory(fs::path(FURNISH_SOURCE_DATA) / "fonts", fault)) return FURNISH_SOURCE_DATA;
#endif
  return {};
}
}  // namespace furnish
