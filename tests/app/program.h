#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "output/tool.h"

namespace furnish::test {

inline constexpr std::string_view demo_date = "2026-11-24";

/// Runs the built program with arguments as a shell reads them; `before` stands in front of it, as
/// "cd /somewhere &&" or "LC_ALL=C".
ToolOutput furnish(const std::string& arguments, const std::string& before = {});
/// Whether one text stands in another.
inline bool has(std::string_view text, std::string_view what) {
  return text.find(what) != std::string_view::npos;
}
/// For a shell.
std::string quoted(std::string_view);

/// Writes a file below a folder, whose own folders are made.
void put(const TemporaryFolder&, std::string_view path, std::string_view bytes);
/// Paths of all files below a folder, relative to it, sorted; without the record of what sheets were
/// made from.
std::vector<std::string> files_below(const std::string& folder);
/// A copy of samples/NAME without what was rendered there.
void copy_sample(std::string_view name, const std::string& to);
}  // namespace furnish::test
