#pragma once

#include <optional>
#include <string_view>

namespace furnish::desk {

/// A file of the page, as it was built into the program.
struct PageFile {
  std::string_view type, bytes;
};
/// By its name, "desk.css"; empty if there is none.
std::optional<PageFile> page_file(std::string_view name);
}  // namespace furnish::desk
