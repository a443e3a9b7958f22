#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>

#include "app/program.h"

namespace furnish::test {

/// A salon of the files that are given, in a folder of its own, in which the program is run.
struct SmallSalon {
  /// Paths and what is in them.
  SmallSalon(std::initializer_list<std::pair<std::string_view, std::string_view>> files) {
    for (const auto& [path, bytes] : files) put(folder, path, bytes);
  }
  /// `before` as of furnish().
  ToolOutput run(const std::string& arguments, const std::string& before = {}) const {
    return furnish(arguments, "cd " + folder.path("") + " && " + before);
  }
  std::string text(std::string_view path) const { return bytes_of(folder.path(path)); }

  TemporaryFolder folder;
};
}  // namespace furnish::test
