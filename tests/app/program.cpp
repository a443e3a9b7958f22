#include "app/program.h"

#include <algorithm>
#include <filesystem>
#include <fstream>

#include "sheet/desk.h"

namespace furnish::test {
namespace fs = std::filesystem;

ToolOutput furnish(const std::string& arguments, const std::string& before) {
  return run(before + " " + quoted(FURNISH_PROGRAM) + " " + arguments);
}

std::string quoted(std::string_view text) {
  std::string out = "'";
  for (const char c : text) out += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return out + "'";
}

void put(const TemporaryFolder& folder, std::string_view path, std::string_view bytes) {
  fs::create_directories(fs::path(folder.path(path)).parent_path());
  folder.file(path, bytes);
}

std::vector<std::string> files_below(const std::string& folder) {
  std::vector<std::string> out;
  for (const auto& entry : fs::recursive_directory_iterator(folder)) {
    if (entry.is_directory() || entry.path().filename() == ".made") continue;
    out.push_back(fs::relative(entry.path(), folder).string());
  }
  std::ranges::sort(out);
  return out;
}

void copy_sample(std::string_view name, const std::string& to) {
  fs::copy(sample(name), to, fs::copy_options::recursive);
  fs::remove_all(fs::path(to) / "sheets");
}
}  // namespace furnish::test
