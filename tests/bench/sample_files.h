#pragma once

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

namespace furnish::bench {
inline const std::string source = FURNISH_SOURCE_DIR, sample = source + "/samples/lantern-street";

inline std::string bytes_of(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}
/// Makes the folders it needs.
inline void put(const std::filesystem::path& path, const std::string& bytes) {
  std::filesystem::create_directories(path.parent_path());
  std::ofstream(path, std::ios::binary) << bytes;
}
}  // namespace furnish::bench
