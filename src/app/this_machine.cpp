#include "app/this_machine.h"

#include <fmt/format.h>
#include <link.h>
#include <sys/stat.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <system_error>
#include <vector>

#include "app/inputs.h"

namespace furnish {
namespace {
namespace fs = std::filesystem;

void add_file(const std::string& path, Sum& sum) {
  struct stat status {};
  sum.add_word(path);
  if (::stat(path.c_str(), &status) != 0) return;
  sum.add_word(fmt::format("{}.{}.{}.{}.{}.{}", status.st_ino, status.st_size,
                           status.st_mtim.tv_sec, status.st_mtim.tv_nsec, status.st_ctim.tv_sec,
                           status.st_ctim.tv_nsec));
}

/// Folders alone, with all below: a file that comes, goes or is replaced changes its folder's time.
void add_folders(const fs::path& folder, Sum& sum) {
  std::error_code fault;
  std::vector<std::string> all{folder.string()};
  for (fs::recursive_directory_iterator it(folder, fault), end; !fault && it != end;
       it.increment(fault)) {
    if (it->is_directory(fault)) all.push_back(it->path().string());
  }
  std::ranges::sort(all);
  for (const std::string& one : all) add_file(one, sum);
}

/// All files in a folder and below it.
void add_files(const fs::path& folder, Sum& sum) {
  std::error_code fault;
  std::vector<std::string> all;
  for (fs::recursive_directory_iterator it(folder, fault), end; !fault && it != end;
       it.increment(fault)) {
    if (it->is_regular_file(fault)) all.push_back(it->path().string());
  }
  std::ranges::sort(all);
  for (const std::string& one : all) add_file(one, sum);
}

int add_library(dl_phdr_info* info, std::size_t, void* sum) {
  const std::string name = info->dlpi_name;
  add_file(name.empty() ? "/proc/self/exe" : name, *static_cast<Sum*>(sum));
  return 0;
}

std::string of_environment(const char* name) {
  const char* const value = std::getenv(name);
  return value == nullptr ? std::string() : value;
}
}  // namespace

std::string mark_of_this_machine() {
  Sum sum;
  sum.add_word(FURNISH_VERSION);
  ::dl_iterate_phdr(add_library, &sum);
  // Letters that the bundled families lack are set in this machine's (fonts.conf(5)).
  for (const char* const name : {"FONTCONFIG_FILE", "FONTCONFIG_PATH", "FONTCONFIG_SYSROOT"}) {
    sum.add_word(of_environment(name));
  }
  const std::string home = of_environment("HOME"), data = of_environment("XDG_DATA_HOME"),
                    config = of_environment("XDG_CONFIG_HOME");
  for (const std::string& folder :
       std::vector<std::string>{"/usr/share/fonts", "/usr/local/share/fonts", home + "/.fonts",
                                (data.empty() ? home + "/.local/share" : data) + "/fonts"}) {
    add_folders(folder, sum);
  }
  // Which of them are taken: few files, that are written in place.
  add_file(of_environment("FONTCONFIG_FILE"), sum);
  add_file(home + "/.fonts.conf", sum);
  for (const std::string& folder :
       std::vector<std::string>{"/etc/fonts", of_environment("FONTCONFIG_PATH"),
                                (config.empty() ? home + "/.config" : config) + "/fontconfig"}) {
    if (!folder.empty()) add_files(folder, sum);
  }
  return sum.text();
}

std::string mark_of_files_in(const std::string& folder) {
  Sum sum;
  add_files(folder, sum);
  return sum.text();
}
}  // namespace furnish
